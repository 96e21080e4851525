/**
 * The log in files, for the command line: one session a file, one line a batch, synced before it is acknowledged. A line
 * cut off by a crash was never acknowledged and is dropped; a batch is one line, so there is no half of one.
 */
import { access, type FileHandle, mkdir, open, readdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { trouble } from "./batch";
import type { Done, EntryStore, PenAt } from "./entryStore";
import { type Lines, readLines } from "./fileLines";
import { takeFileLock } from "./fileLock";
import { readParts, syncFolder, writeParts } from "./fileParts";
import type { JournalTrouble, KeptSession } from "./journal";
import { clientIn, commitmentsIn, erased } from "./personal";
import { Uuidv7 } from "./uuidv7";

type Open = { file: FileHandle; pen: string; bytes: number; count: number };

const asTrouble = (error: unknown): JournalTrouble => {
  const code = (error as NodeJS.ErrnoException)?.code;
  if (code === "ENOSPC" || code === "EDQUOT" || code === "EFBIG") return trouble("storage-full", "The disk is full.");
  if (code === "ENOENT") return trouble("session-unknown", "No such session is kept.");
  if (error instanceof SyntaxError) return trouble("damaged", "The file holds a line that is not JSON.");
  return trouble("storage-lost", `The log cannot be written or read: ${(error as Error)?.message ?? error}`);
};

/** @param folder Made where it is missing. Each session is `<session>.jsonl`, with `<session>.lock` while it is written. */
export function fileStore(folder: string): EntryStore {
  const writing = new Map<string, Open>();
  const path = (session: string) => join(folder, `${session}.jsonl`);
  const lock = (session: string) => join(folder, `${session}.lock`);
  const beside = (session: string) => join(folder, `${session}.personal`);

  /** Writes one line and syncs it. On trouble the file is cut back to what was acknowledged. */
  async function addLine<K extends keyof Lines>(at: PenAt, line: Lines[K], entries: number): Promise<Done> {
    const here = writing.get(at.session);
    if (!here || here.pen !== at.pen || here.count !== at.count) {
      return trouble("other-writer", "This session has another writer.");
    }
    const bytes = Buffer.from(`${JSON.stringify(line)}\n`, "utf8");
    try {
      await writeAll(here.file, bytes, here.bytes);
      await here.file.datasync();
      here.bytes += bytes.length;
      here.count += entries;
      return { ok: true };
    } catch (error) {
      try {
        await here.file.truncate(here.bytes);
        await here.file.datasync();
      } catch {
        writing.delete(at.session);
      }
      return asTrouble(error);
    }
  }

  /** What stands beside the chain; what was written ahead of a fact that never came is left out. */
  async function stored(session: string) {
    const { value, bytes } = readLines(await readFile(path(session)));
    const commitments = value.header ? commitmentsIn(value.header, value.entries) : new Map();
    const personal = (await readParts(beside(session))).filter(({ n }) => commitments.has(n));
    return { value: { ...value, personal }, bytes };
  }

  async function finished(session: string): Promise<void> {
    const here = writing.get(session);
    writing.delete(session);
    await here?.file.close().catch(() => undefined);
    await rm(lock(session), { force: true }).catch(() => undefined);
  }

  async function every() {
    await mkdir(folder, { recursive: true });
    const names = (await readdir(folder)).filter((name) => name.endsWith(".jsonl")).map((name) => name.slice(0, -6));
    const ids = names.filter((name) => Uuidv7.safeParse(name).success).sort();
    const read = await Promise.allSettled(
      ids.reverse().map(async (session) => ({ session, ...(await stored(session)) })),
    );
    // A damaged file is told when it is asked for by name; it does not hide the others.
    return read.flatMap((one) => (one.status === "fulfilled" ? [one.value] : []));
  }

  type Read = Awaited<ReturnType<typeof every>>[number];
  async function listed(isWanted: (read: Read) => boolean): ReturnType<EntryStore["all"]> {
    try {
      const rows = (await every()).filter((read) => read.value.header && isWanted(read));
      return {
        ok: true,
        rows: rows.map(({ session, value }, at) => ({
          session,
          order: rows.length - at,
          header: value.header as KeptSession["header"],
          head: value.head,
          count: value.entries.length,
          client: clientIn(value.header as KeptSession["header"], value.personal),
        })),
      };
    } catch (error) {
      return asTrouble(error);
    }
  }

  return {
    create: async ({ header, personal }, head, signature, pen) => {
      const { session } = header;
      let locked = false;
      try {
        await mkdir(folder, { recursive: true });
        if (await isThere(path(session))) return trouble("session-exists", "This session is already kept.");
        locked = await takeFileLock(lock(session));
        if (!locked) return trouble("session-exists", "This session is already kept.");
        await writeParts(beside(session), personal);
        writing.set(session, { file: await open(path(session), "wx"), pen, bytes: 0, count: 0 });
        const made = await addLine<"header">({ session, pen, count: 0 }, { header, signature, head }, 0);
        if (made.ok) await syncFolder(folder);
        else {
          await finished(session);
          await rm(path(session), { force: true });
          await rm(beside(session), { force: true });
        }
        return made;
      } catch (error) {
        if (locked) await finished(session);
        return asTrouble(error);
      }
    },
    add: async (at, batch, parts) => {
      try {
        // Ahead of the fact: one that is kept has its part. It is the pen's own place, so nothing is written over.
        if (parts.length > 0 && writing.get(at.session)?.pen === at.pen)
          await writeParts(beside(at.session), [...(await stored(at.session)).value.personal, ...parts]);
      } catch (error) {
        return asTrouble(error);
      }
      const line = { entries: batch.entries, signatures: [...batch.signatures], head: batch.head };
      return addLine<"batch">(at, line, batch.entries.length);
    },
    close: (at, closing) => addLine<"closing">(at, { closing }, 0),
    erase: async (session, places) => {
      try {
        const { personal } = (await stored(session)).value;
        await writeParts(
          beside(session),
          personal.map((part) => (places.includes(part.n) ? erased(part.n) : part)),
        );
        return { ok: true };
      } catch (error) {
        return asTrouble(error);
      }
    },
    takePen: async (session, pen) => {
      try {
        const { value, bytes } = await stored(session);
        if (value.closing) return trouble("session-sealed", "This session is sealed.");
        if (!(await takeFileLock(lock(session))))
          return trouble("other-writer", "Another process writes this session.");
        const file = await open(path(session), "r+");
        await file.truncate(bytes);
        writing.set(session, { file, pen, bytes, count: value.entries.length });
        return { ok: true };
      } catch (error) {
        return asTrouble(error);
      }
    },
    dropPen: async (session, pen) => {
      if (writing.get(session)?.pen === pen) await finished(session);
    },
    load: async (session) => {
      try {
        return { ok: true, stored: (await stored(session)).value };
      } catch (error) {
        return asTrouble(error);
      }
    },
    all: () => listed(() => true),
    unfinished: () => listed(({ value }) => !value.closing),
    newestHead: async (station) => {
      try {
        const newest = (await every()).find(({ value }) => value.header?.input?.station === station);
        return { ok: true, head: newest?.value.head ?? null };
      } catch (error) {
        return asTrouble(error);
      }
    },
  };
}

const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

async function writeAll(file: FileHandle, bytes: Uint8Array, position: number): Promise<void> {
  for (let done = 0; done < bytes.length; ) {
    const { bytesWritten } = await file.write(bytes, done, bytes.length - done, position + done);
    done += bytesWritten;
  }
}
