/** Sessions lived through the real chart, as entries: what a record is made of, for tests of records. */
import { begin, decide } from "../../../machines/session/decide";
import type { SessionEvent, Way } from "../../../machines/session/vocabulary";
import { today } from "../../../tests/support/session";
import { asHeader, knownBy, memoryJournal, type Signer, type Stamp, type Writer } from "../../log";
import { wallTime } from "../../log/wallTime";
import type { SessionInput } from "../../session/sessionInput";
import { currentRules } from "../replay/replay";

export const lifeA = "019ab9d8-6a00-7000-8000-00000000000a";
export const sessionA = "019ab9d8-6a00-7000-8000-0000000000a1";

export const headerFor = (input: SessionInput, device: string, session = sessionA) =>
  asHeader({ session, input, rules: currentRules, phraseModel: null, appVersion: "0.1.0", device, previousHead: null });

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

/** Tells the chart these events and keeps what it states. Every event but the passing of time takes half a second. */
export async function live(input: SessionInput, events: readonly SessionEvent[], signer: Signer) {
  const journal = memoryJournal(signer);
  const opened = await journal.open(headerFor(input, signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
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
