/** Sessions lived through the real chart, as entries: what a record is made of, for tests of records. */
import { begin, decide } from "../../../machines/session/decide";
import type { SessionEvent, Way } from "../../../machines/session/vocabulary";
import { today } from "../../../tests/support/session";
import { type attachmentOf, knownBy, memoryJournal, openRecord, type Signer, type Stamp, type Writer } from "../../log";
import { wallTime } from "../../log/wallTime";
import { writeWav } from "../../recogniser/sound/writeWav";
import { currentRules } from "../../session/rules";
import type { SessionInput } from "../../session/sessionInput";

export const lifeA = "019ab9d8-6a00-7000-8000-00000000000a";
export const sessionA = "019ab9d8-6a00-7000-8000-0000000000a1";

export const openingFor = (input: SessionInput, device: string, session = sessionA, salt?: Uint8Array) =>
  openRecord(
    { session, input, rules: currentRules, phraseModel: null, appVersion: "0.1.0", device, previousHead: null },
    salt,
  );

type Attached = ReturnType<typeof attachmentOf>;
/** A quarter of a second of a tone as a WAV file: stands for a note that was spoken. */
export const toneWav = writeWav(
  Float32Array.from({ length: 2_000 }, (_, at) => 0.2 * Math.sin((2 * Math.PI * 440 * at) / 8_000)),
  8_000,
);
export const noteEvent = ({ note }: Attached, lengthMs = 250): SessionEvent => ({
  type: "note.recorded",
  note,
  lengthMs,
});

/** Wall time at monotonic zero of the page's life. */
const startMs = Date.UTC(2026, 10, 25, 9, 0);

const voice: Way = { by: "voice", confidence: 0.93 };
const clock: Way = { by: "clock" };

export const stampOf = (way: Way, monoMs: number, life = lifeA): Stamp => ({
  at: wallTime(startMs + monoMs, 0),
  monoMs,
  life,
  way,
  known: knownBy(way),
});

/**
 * Tells the chart these events and keeps what it states. Every event but the passing of time takes half a second.
 * @param opening given where its salt must repeat.
 */
export async function live(
  input: SessionInput,
  events: readonly SessionEvent[],
  signer: Signer,
  attachments: readonly Attached[] = [],
  opening = openingFor(input, signer.publicKey),
) {
  const journal = memoryJournal(signer);
  const opened = await journal.open(opening);
  if (!opened.ok) throw new Error(opened.message);
  for (const { note, attachment } of attachments) opened.writer.attach(note, attachment);
  await tellAll(opened.writer, input, [{ type: "session.begin", today }, ...events]);
  const read = await journal.read(sessionA);
  if (!read.ok) throw new Error(read.message);
  return { journal, writer: opened.writer, kept: read.kept };
}

async function tellAll(writer: Writer, input: SessionInput, events: readonly SessionEvent[]): Promise<void> {
  let state = begin(input);
  let monoMs = 0;
  for (const event of events) {
    const passes = event.type === "time.witnessed";
    monoMs += passes ? event.elapsedMs : 500;
    const { next, facts } = decide(state, event);
    const kept = await writer.append(facts, stampOf(passes || event.type === "time.gap" ? clock : voice, monoMs));
    if (!kept.ok) throw new Error(kept.message);
    state = next;
  }
}
