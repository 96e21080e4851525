/** The studio's rows on the disk: whole or not at all, checked both ways, and put back by undo. */
import "fake-indexeddb/auto";
import { openDB } from "idb";
import { describe, expect, it } from "vitest";
import { needle, spray, stockLine } from "../shelf/examples";
import type { Change } from "./kinds";
import { shelfOf } from "./studio";
import { indexedDbStudio } from "./studioStore";

let made = 0;
const fresh = () => {
  made += 1;
  const name = `studio-${made}`;
  return { name, store: indexedDbStudio(name) };
};
const put: readonly Change[] = [
  { kind: "product", id: "spray", value: spray },
  { kind: "stock", id: "s1", value: { line: stockLine(), countedAtMs: 0 } },
];

async function read(store: ReturnType<typeof indexedDbStudio>) {
  const found = await store.read();
  return found.ok ? found.value : expect.fail(found.words);
}

/** Writes behind the store's back, as damage or another version would. */
async function spoil(name: string, row: unknown) {
  const db = await openDB(name);
  await db.put("rows", row);
  db.close();
}

describe("the studio's store", () => {
  it("keeps rows for another page to read", async () => {
    const { name, store } = fresh();
    expect((await store.keep(put)).ok).toBe(true);
    const { studio, unreadable } = await read(indexedDbStudio(name));
    expect(shelfOf(studio)).toEqual({ products: [spray], stock: [stockLine()] });
    expect(unreadable).toEqual([]);
  });

  it("gives the changes that put everything back", async () => {
    const { store } = fresh();
    await store.keep(put);
    const renamed = { ...spray, name: "Surface disinfectant B" };
    const kept = await store.keep([
      { kind: "product", id: "spray", value: renamed },
      { kind: "stock", id: "s1", value: null },
      { kind: "product", id: "needle", value: needle },
    ]);
    expect((await read(store)).studio.stock.size).toBe(0);
    await store.keep(kept.ok ? kept.value : []);
    expect(shelfOf((await read(store)).studio)).toEqual({ products: [spray], stock: [stockLine()] });
  });

  it("keeps nothing of an act of which one row has not its shape", async () => {
    const { store } = fresh();
    const wrong = { ...spray, orderTo: -1 };
    const kept = await store.keep([...put, { kind: "product", id: "wrong", value: wrong }]);
    expect(kept).toMatchObject({ ok: false, code: "not-valid" });
    expect((await read(store)).studio.product.size).toBe(0);
  });

  it("names a row that cannot be read, and does not write over it", async () => {
    const { name, store } = fresh();
    await store.keep(put);
    await spoil(name, { kind: "product", id: "ink", value: { id: "ink", name: 5 } });
    const { studio, unreadable } = await read(store);
    expect([...studio.product.keys()]).toEqual(["spray"]);
    expect(unreadable).toEqual([{ kind: "product", id: "ink" }]);
    const over = await store.keep([{ kind: "product", id: "ink", value: { ...needle, id: "ink" } }]);
    expect(over).toMatchObject({ ok: false, code: "unreadable" });
    expect((await read(store)).unreadable).toHaveLength(1);
  });

  it("lets a row that cannot be read be taken away", async () => {
    const { name, store } = fresh();
    await store.keep(put);
    await spoil(name, { kind: "pack", id: "P1", value: null });
    expect(await store.keep([{ kind: "pack", id: "P1", value: null }])).toEqual({ ok: true, value: [] });
    expect((await read(store)).unreadable).toEqual([]);
  });

  it("leaves stock out whose product is gone", async () => {
    const { store } = fresh();
    await store.keep([...put, { kind: "product", id: "spray", value: null }]);
    expect(shelfOf((await read(store)).studio)).toEqual({ products: [], stock: [] });
  });

  it("says in words that the store does not answer", async () => {
    const { name, store } = fresh();
    const other = await openDB(name, 9);
    expect(await store.read()).toMatchObject({ ok: false, code: "storage-lost" });
    expect(await store.keep(put)).toMatchObject({ ok: false, code: "storage-lost" });
    other.close();
  });
});
