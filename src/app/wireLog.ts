/** The log of this device: its key and its journal, and what its newest sessions left unready. */
import { deviceSigner, indexedDbJournal, type Journal, newSigner, type Signer } from "../log";
import { openVault, type Vault } from "../log/vault";

export interface Log {
  readonly journal: Journal;
  readonly signer: Signer;
  /** The lock of the records; null where nothing is kept beyond the page. */
  readonly vault: Vault | null;
}

export type OpenedLog = { ok: true; log: Log } | { ok: false; why: "noSigning" | "noStore" };

/** Without a key that signs and a store that keeps, nothing may begin. */
export async function deviceLog(): Promise<OpenedLog> {
  try {
    await newSigner();
  } catch {
    return { ok: false, why: "noSigning" };
  }
  try {
    const signer = await deviceSigner();
    const vault = openVault();
    const journal = indexedDbJournal(signer, { vault });
    const readable = await journal.unfinished();
    // What a kill left between its seal and the lock.
    void vault.tidy().catch(() => undefined);
    return readable.ok ? { ok: true, log: { journal, signer, vault } } : { ok: false, why: "noStore" };
  } catch {
    return { ok: false, why: "noStore" };
  }
}

/**
 * By station: what its newest sealed session left unready, as its own record says; the next set-up begins with that. A
 * thing that the newest session's protocol does not know was not dealt with there: what an older one says of it stands.
 */
export async function leftUnready(
  journal: Journal,
  vault: Pick<Vault, "left"> | null = null,
): Promise<Readonly<Record<string, readonly string[]>>> {
  const listed = await journal.all();
  // After it: what is put away between the two is seen twice, never not at all.
  const away = (await vault?.left()) ?? [];
  const left: Record<string, readonly string[]> = {};
  const known = new Map<string, Set<string>>();
  const underLock = new Set(away.map(({ session }) => session));
  const open = (listed.ok ? listed.sessions : []).filter(({ session }) => !underLock.has(session));
  const all = [
    ...away,
    ...open.map(({ session, order, header: { input } }) => ({
      ...{ session, order, station: input.station, items: input.protocol.items.map(({ id }) => id) },
      unready: null,
    })),
  ].sort((a, b) => b.order - a.order);
  for (const { session, station, items, unready } of all) {
    const dealt = known.get(station) ?? new Set<string>();
    if (items.every((item) => dealt.has(item))) continue;
    const said = underLock.has(session) ? unready : await unreadyIn(journal, session);
    if (!said) continue;
    left[station] = [...(left[station] ?? []), ...said.filter((id) => !dealt.has(id))];
    known.set(station, new Set([...dealt, ...items]));
  }
  return left;
}

async function unreadyIn(journal: Journal, session: string): Promise<readonly string[] | null> {
  const read = await journal.read(session);
  return (read.ok && read.kept.closing?.summary.closed?.unready) || null;
}
