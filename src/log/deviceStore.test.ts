/** On a store of memory that fails as Chromium's does; the real one on a full disk: tests/journeys/fullDisk.test.ts. */
import "fake-indexeddb/auto";
import { unwrap } from "idb";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type * as DeviceStore from "./deviceStore";

const { open, deleteDatabase } = IDBFactory.prototype;
let device: typeof DeviceStore;
let name = 0;

beforeEach(async () => {
  vi.resetModules();
  device = await import("./deviceStore");
  name += 1;
});
afterEach(() => {
  vi.restoreAllMocks();
  IDBFactory.prototype.deleteDatabase = deleteDatabase;
});

const ended: string[] = [];
const opened = () =>
  device.openDevice(`store-${name}`, 1, {
    upgrade: (made) => void made.createObjectStore("rows"),
    terminated: () => ended.push(`store-${name}`),
  });
const asked = (): string[] =>
  vi
    .mocked(IDBFactory.prototype.open)
    .mock.calls.map(([of]) => String(of))
    .concat();

/** It is opened, and left for the next start after each of two turns. */
const leaf = ["gloveside-leaf", "gloveside-leaf", "gloveside-leaf"];

/** As on a disk that is full: nothing can be taken away. */
const refuseLeaves = () => {
  IDBFactory.prototype.deleteDatabase = () => {
    throw new DOMException("FILE_ERROR_NO_SPACE", "UnknownError");
  };
};

test("turns one leaf before the first database of a page's life, and none before the next", async () => {
  vi.spyOn(IDBFactory.prototype, "open").mockImplementation(open);
  await opened();
  await device.openDevice(`other-${name}`, 1, {});
  expect(asked()).toEqual([...leaf, `store-${name}`, `other-${name}`]);
});

test("turns another leaf once the browser has given up a transaction for a reason of its own", async () => {
  const before = await opened();
  const given = before.transaction("rows", "readwrite");
  given.done.catch(() => undefined);
  Object.defineProperty(unwrap(given), "error", {
    get: () => new DOMException("closing", "UnknownError"),
    set: () => {},
  });
  given.abort();
  await given.done.catch(() => undefined);
  expect(ended).toContain(`store-${name}`);
  vi.spyOn(IDBFactory.prototype, "open").mockImplementation(open);
  await (await opened()).put("rows", 1, "one");
  expect(asked()).toEqual([...leaf, `store-${name}`]);
});

test("lets what is kept be read, and nothing be written, while no leaf can be turned", async () => {
  await (await opened()).put("rows", "kept", "one");
  vi.resetModules();
  device = await import("./deviceStore");
  refuseLeaves();
  const database = await opened();
  expect(await database.get("rows", "one")).toBe("kept");
  await expect(database.put("rows", "more", "two")).rejects.toThrow("not safe to write");
  await expect(device.leafTurned()).rejects.toThrow("NO_SPACE");
  IDBFactory.prototype.deleteDatabase = deleteDatabase;
  await device.leafTurned();
  await database.put("rows", "more", "two");
  expect(await database.count("rows")).toBe(2);
});

test("makes no new database while no leaf can be turned", async () => {
  refuseLeaves();
  await expect(opened()).rejects.toThrow();
});
