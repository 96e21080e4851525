/**
 * The file that Chromium's store writes to, torn as a kill or a power cut tears it. Its format: LevelDB, doc/log_format.md:
 * blocks of 32 KiB; an entry begins with checksum (4 bytes), length (2, little-endian) and kind (1: whole).
 */
import { appendFileSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const blockBytes = 32_768;
const headerBytes = 7;

/** @param profile of a browser that does not run. @returns the newest file of its only origin's store. */
function newestLog(profile: string): string {
  const stores = join(profile, "Default", "IndexedDB");
  const store = join(stores, readdirSync(stores).find((name) => name.endsWith(".leveldb")) ?? "");
  const log = readdirSync(store)
    .filter((name) => name.endsWith(".log"))
    .sort()
    .at(-1);
  if (log === undefined) throw new Error(`${store} holds no log.`);
  return join(store, log);
}

/** An entry that was begun and of which only the first bytes came to the disk. Nothing that was whole is touched. */
export function tearNextEntry(profile: string): void {
  const log = newestLog(profile);
  const left = blockBytes - (statSync(log).size % blockBytes);
  if (left < 2 * headerBytes) throw new Error("No entry begins so near the end of a block.");
  const header = Buffer.alloc(headerBytes, 0xa5);
  header.writeUInt16LE(left - headerBytes, 4);
  header.writeUInt8(1, 6);
  appendFileSync(log, Buffer.concat([header, Buffer.alloc(Math.min(left - headerBytes - 1, 100), 0x5a)]));
}

/** One byte of an entry in the middle is another: the store cannot be read any more. */
export function damageLog(profile: string): void {
  const log = newestLog(profile);
  const bytes = readFileSync(log);
  const at = Math.floor(bytes.length / 2);
  bytes.writeUInt8((bytes.readUInt8(at) + 1) % 256, at);
  writeFileSync(log, bytes);
}
