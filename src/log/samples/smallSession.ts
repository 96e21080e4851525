/** Envelopes and an opening for the log's own tests, over the small invented station. */
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import type { SessionFact } from "../../session/fact";
import type { SessionInput } from "../../session/sessionInput";
import type { Stamp } from "../entry";
import { type OpenedRecord, openRecord } from "../personal";
import type { Summary } from "../summary";
import { wallTime } from "../wallTime";

export const smallInput: SessionInput = inputFor(smallProtocol, {
  lots: [{ item: "needle", lot: "N-204", expiry: "2028-01-31", known: "scanned" }],
});

export const sampleSession = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
export const sampleLife = "017f22e2-79b0-7000-8000-000000000001";

export const smallOpening = (device: string, session: string = sampleSession): OpenedRecord =>
  openRecord({
    session,
    input: smallInput,
    rules: "1.0.0",
    phraseModel: null,
    appVersion: "0.1.0",
    device,
    previousHead: null,
  });

/** A stamp so many milliseconds into the page life, by voice. */
export const stampAt = (monoMs: number, more: Partial<Stamp> = {}): Stamp => ({
  at: wallTime(Date.UTC(2026, 10, 25, 6, 40) + monoMs, 60),
  monoMs,
  life: sampleLife,
  way: { by: "voice", confidence: 0.93 },
  known: "said",
  ...more,
});

export const began: SessionFact = { type: "v1.SessionBegan", witnessedMs: 0, cause: 0, today: "2026-11-25" };
export const done = (name: string, cause: number, witnessedMs = 0): SessionFact => ({
  type: "v1.StepDone",
  witnessedMs,
  cause,
  step: name,
});

/** A summary of the right shape, for tests that are not about what it says. */
export const anySummary: Summary = {
  outcome: "unfinished",
  closed: null,
  phases: [],
  wetClocks: [],
  hands: { washed: 0, rubbed: 0, glovesOn: 0, glovesOff: 0 },
  sharps: { opened: 0, inContainer: 0, parked: 0, counts: [], recounts: 0, discrepancy: null },
  lots: [],
  deviations: [],
  skipped: [],
  refused: [],
  events: [],
  exposures: [],
  gaps: [],
  waste: { sharps: 0, contaminated: 0, general: 0, reprocess: 0 },
  known: { measured: 0, scanned: 0, said: 1 },
  takenBack: 0,
};
