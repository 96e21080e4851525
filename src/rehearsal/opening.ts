/**
 * How a rehearsed session opens: its input, ids, key and clocks. With a seed everything in the record repeats byte for
 * byte, the key included, which anybody who knows the seed then has: good for rehearsals, worth nothing as proof.
 */
import { currentRules } from "../export";
import { digestOf, newSigner, type OpenedRecord, openRecord, type Signer, uuidv7, wallTime } from "../log";
import { bytesOf } from "../log/canonical";
import { signerFromSecret } from "../log/signedByScript";
import type { Protocol } from "../session/protocol";
import type { SessionInput } from "../session/sessionInput";

export interface Opening {
  readonly protocol: Protocol;
  readonly brisk: boolean;
  readonly address: SessionInput["address"];
  /** Wall time at the beginning of the sound, milliseconds since 1970, and minutes east of UTC. */
  readonly startMs: number;
  readonly offsetMin: number;
  /** IANA zone written into the session. */
  readonly zone: string;
  /** Any text; null for a fresh key and fresh ids. */
  readonly seed: string | null;
  /** SHA-256 of the phrase model that listens; null where none does. */
  readonly phraseModel: string | null;
  readonly appVersion: string;
}

export interface Opened {
  readonly input: SessionInput;
  readonly record: OpenedRecord;
  readonly signer: Signer;
  /** The page life of the log's stamps: the run of this rehearsal. */
  readonly life: string;
  wallTimeAt(soundMs: number): string;
}

/** Invented and generic; labels are those that the protocol brings. */
export const rehearsalInput = ({ protocol, address, zone, brisk }: Omit<Opening, "seed">): SessionInput => ({
  protocol,
  labels: Object.fromEntries(protocol.products.map(({ id, label }) => [id, label])),
  lots: [],
  station: "Rehearsal station",
  artist: "Recorded artist",
  clientReference: "rehearsal",
  address,
  language: "en",
  zone,
  brisk,
  carriedOver: [],
});

export async function open(opening: Opening): Promise<Opened> {
  const { seed, startMs, offsetMin, phraseModel, appVersion } = opening;
  const input = rehearsalInput(opening);
  const signer = seed === null ? await newSigner() : await signerFromSecret(seeded(seed, "key"));
  const idOf = (what: string) =>
    seed === null ? uuidv7(startMs) : uuidv7(startMs, seeded(seed, what).subarray(0, 10));
  const fields = {
    session: idOf("session"),
    input,
    rules: currentRules,
    phraseModel,
    appVersion,
    device: signer.publicKey,
    previousHead: null,
  };
  const record = seed === null ? openRecord(fields) : openRecord(fields, seeded(seed, "salt"));
  return {
    input,
    record,
    signer,
    life: idOf("life"),
    wallTimeAt: (soundMs) => wallTime(startMs + soundMs, offsetMin),
  };
}

const seeded = (seed: string, what: string): Uint8Array =>
  bytesOf(digestOf(new TextEncoder().encode(`gloveside rehearsal ${what} ${seed}`)));
