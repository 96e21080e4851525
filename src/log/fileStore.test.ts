import { appendFile, open, readdir, readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { tempFolder } from "../../tests/support/tempFolder";
import { fileJournal } from "./fileJournal";
import { newSigner } from "./index";
import { began, done, sampleSession, smallOpening, stampAt } from "./samples/smallSession";

const begin = async () => {
  const folder = tempFolder("log");
  const signer = await newSigner();
  const opened = await fileJournal(folder, signer).open(smallOpening(signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const file = join(folder, `${sampleSession}.jsonl`);
  return { folder, signer, writer: opened.writer, file, lock: join(folder, `${sampleSession}.lock`) };
};

/** No process has this number: Linux counts to 4,194,304 at most. */
const deadProcess = "4194305";

test("drops a line that was cut off, at whatever byte, and goes on after the last whole one", async () => {
  const { folder, signer, writer, file, lock } = await begin();
  await writer.append([began], stampAt(0));
  const whole = (await stat(file)).size;
  await writer.append([done("wash", 1), done("gloves", 1)], stampAt(5));
  const all = await readFile(file);
  const middle = whole + Math.floor((all.length - whole) / 2);
  for (const cut of [whole, whole + 1, middle, all.length - 1]) {
    await writeFile(file, all.subarray(0, cut));
    await writeFile(lock, deadProcess);
    const resumed = await fileJournal(folder, signer).resume(sampleSession);
    if (!resumed.ok) throw new Error(resumed.message);
    expect(resumed.kept.entries.map((entry) => entry.n)).toEqual([1]);
    const next = await resumed.writer.append([done("wash", 1)], stampAt(6));
    expect(next.ok && next.entries[0]?.n).toBe(2);
    await resumed.writer.release();
    expect((await fileJournal(folder, signer).read(sampleSession)).ok).toBe(true);
  }
});

test("refuses a second writer while the first process lives", async () => {
  const { folder, signer } = await begin();
  const second = await fileJournal(folder, signer).resume(sampleSession);
  expect(!second.ok && second.code).toBe("other-writer");
});

test("leaves no lock behind when the pen is put down", async () => {
  const { folder, writer } = await begin();
  await writer.release();
  expect(await readdir(folder)).toEqual([`${sampleSession}.jsonl`, `${sampleSession}.personal`]);
});

test("says storage-lost, and keeps nothing, where the folder is a file", async () => {
  const { folder, signer } = await begin();
  const notAFolder = join(folder, "plain");
  await writeFile(notAFolder, "");
  const opened = await fileJournal(notAFolder, signer).open(smallOpening(signer.publicKey));
  expect(!opened.ok && opened.code).toBe("storage-lost");
});

test("cuts a batch back that the disk had room for only half of, and says storage-full", async () => {
  const { folder, signer, writer, file } = await begin();
  await writer.append([began], stampAt(0));
  const before = await readFile(file);
  const handle = await open(file, "r+");
  const write = vi.spyOn(Object.getPrototypeOf(handle), "write");
  const half = new Uint8Array(64).fill(123);
  write.mockImplementationOnce(async (_bytes: unknown, _from: unknown, _length: unknown, position: unknown) => {
    await writeFile(file, Buffer.concat([before, half]));
    throw Object.assign(new Error(`No space left at ${position}.`), { code: "ENOSPC" });
  });
  const full = await writer.append([done("wash", 1), done("gloves", 1)], stampAt(5));
  const after = await readFile(file);
  const retried = await writer.append([done("wash", 1)], stampAt(6));
  await handle.close();
  vi.restoreAllMocks();
  expect(!full.ok && full.code).toBe("storage-full");
  expect(after.equals(before)).toBe(true);
  expect(retried.ok).toBe(true);
  expect((await fileJournal(folder, signer).read(sampleSession)).ok).toBe(true);
});

test("calls a whole line that is not JSON damaged, and still lists the other sessions", async () => {
  const { folder, signer, writer, file } = await begin();
  const journal = fileJournal(folder, signer);
  await journal.open(smallOpening(signer.publicKey, "017f22e2-79b1-7cc3-98c4-dc0c0c07398f"));
  await writer.append([began], stampAt(0));
  await appendFile(file, "not json\n");
  const read = await journal.read(sampleSession);
  const listed = await journal.unfinished();
  expect(!read.ok && read.code).toBe("damaged");
  expect(listed.ok && listed.sessions.length).toBe(1);
});
