/** How this device keeps what it holds: the browser's promise and room, backups, and the key that signs here. */
import type { Keeping } from "../screen/archive/keepingModel";
import type { StudioModel } from "../screen/sums/studioModel";
import type { Change, Kind } from "../studio/kinds";
import { kindNames } from "../studio/kinds";
import type { StudioStore } from "../studio/studioStore";
import { saveBlob } from "./device";
import type { DeviceMemory } from "./deviceMemory";
import type { Log } from "./wireLog";

/** Backups are the smaller part of a day: their program comes when one is made or read. */
const restoring = () => import("../backup/restore");

interface KeepingParts {
  readonly log: Log;
  readonly store: StudioStore;
  readonly studio: StudioModel;
  readonly memory: DeviceMemory;
  readonly addProtocol: (text: string) => Promise<unknown>;
}

export function wireKeeping({
  log,
  store,
  studio,
  memory,
  addProtocol,
}: KeepingParts): Keeping & { settleRestore(): Promise<void> } {
  const rows = async (): Promise<readonly Change[]> => {
    const read = await store.read();
    if (!read.ok) throw new Error(read.words);
    const { studio } = read.value;
    return kindNames.flatMap((kind: Kind) => [...studio[kind]].map(([id, value]) => ({ kind, id, value }) as Change));
  };

  /** What is here already stays as it is: it may have been changed since. */
  const keepOthers = async (restored: readonly Change[], protocols: readonly string[]): Promise<void> => {
    const here = new Set((await rows()).map(({ kind, id }) => `${kind} ${id}`));
    const missing = restored.filter(({ kind, id }) => !here.has(`${kind} ${id}`));
    const { archiveWords } = await import("../screen/archive/words");
    const act = archiveWords(memory.settings().language).keeping.restore;
    const trouble = missing.length === 0 ? null : await studio.keep(act, missing);
    if (trouble !== null) throw new Error(trouble);
    for (const text of protocols) await addProtocol(text);
  };
  /** What a kill left half restored is finished; without the program for it, at the next start. */
  const settleRestore = async (): Promise<void> => (await restoring()).settle(keepOthers);

  return {
    settleRestore: () => settleRestore().catch(() => undefined),
    vault: log.vault,
    async isPromised() {
      return (await navigator.storage?.persisted?.()) ?? null;
    },
    async askPromise() {
      return (await navigator.storage?.persist?.()) ?? null;
    },
    async room() {
      const { usage, quota } = (await navigator.storage?.estimate?.()) ?? {};
      return usage === undefined || quota === undefined ? null : { usedBytes: usage, ofBytes: quota };
    },
    async backUp(passphrase, progress) {
      const sources = { journal: log.journal, vault: log.vault, rows, protocols: () => memory.protocolTexts() };
      const { writeBackup } = await import("../backup/writeBackup");
      const written = await writeBackup(sources, passphrase, progress);
      if (!written.ok) return written;
      const day = new Date().toISOString().slice(0, 10);
      saveBlob(`gloveside-backup-${day}.gloveside`, written.file);
      return { ok: true, counts: written.counts, damaged: written.damaged.length, bytes: written.file.size };
    },
    restore: async (file, passphrase, progress) =>
      (await restoring()).restore(file, passphrase, keepOthers, progress, undefined, log.vault ?? undefined),
  };
}
