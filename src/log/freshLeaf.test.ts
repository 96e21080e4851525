/** What the browser does at it is seen in tests/journeys/tornLog.test.ts; here what we ask of it, and what it tells. */
import { IDBFactory } from "fake-indexeddb";
import { expect, test } from "vitest";
import { freshLeaf } from "./freshLeaf";

/** Chromium's additions to the event, as its interface describes them (IDBDataLossAmount: none, total). */
function telling(store: IDBFactory, loss: { dataLoss?: string; dataLossMessage?: string }): IDBFactory {
  return new Proxy(store, {
    get(on, name) {
      if (name !== "open") return Reflect.get(on, name).bind(on);
      return (...asked: [string, number]) => {
        const request = on.open(...asked);
        request.addEventListener("upgradeneeded", (event) => Object.assign(event, loss));
        return request;
      };
    },
  });
}

test("takes a database away twice at every start, and leaves one for the next", async () => {
  const store = new IDBFactory();
  const taken: number[] = [];
  const counting = new Proxy(store, {
    get(on, name) {
      if (name !== "deleteDatabase") return Reflect.get(on, name).bind(on);
      return (asked: string) => {
        const request = on.deleteDatabase(asked);
        request.addEventListener("success", (event) => taken.push((event as IDBVersionChangeEvent).oldVersion));
        return request;
      };
    },
  });
  await freshLeaf("leaf", counting);
  await freshLeaf("leaf", counting);
  expect(taken).toEqual([1, 1, 1, 1]);
  expect((await store.databases()).map(({ name }) => name)).toEqual(["leaf"]);
});

test("tells in the browser's words that the store was begun anew", async () => {
  const store = telling(new IDBFactory(), { dataLoss: "total", dataLossMessage: "checksum mismatch" });
  expect(await freshLeaf("leaf", store)).toEqual({ lost: "checksum mismatch" });
});

test("tells of no loss on a first start, nor where the browser says nothing of it", async () => {
  expect(await freshLeaf("leaf", telling(new IDBFactory(), { dataLoss: "none", dataLossMessage: "" }))).toEqual({
    lost: null,
  });
  expect(await freshLeaf("leaf", new IDBFactory())).toEqual({ lost: null });
});
