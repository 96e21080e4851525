/** Records hashed and signed anew by the device's own key, whose facts do not follow from the rules. */
import { expect, test } from "vitest";
import type { SessionEvent } from "../../../machines/session/vocabulary";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { type LogEntry, newSigner } from "../../log";
import type { SessionFact } from "../../session/fact";
import { reapplyLeadMs } from "../../session/wetClock";
import { recordOf, recordText } from "../recordFile";
import { lifeA, live } from "../samples/lived";
import { remade } from "../samples/remake";
import { wholeSession } from "../samples/wholeSession";
import { verifyRecord } from "../verifyRecord";
import { type BreachCode, breachCodes } from "./rule";

const input = inputFor(smallProtocol);
const signer = await newSigner();
const { kept } = await live(input, wholeSession, signer);

type Entries = LogEntry[];
const lifeB = lifeA.replace("0a", "0b");

/** The first entry of this type, from number `after` on. */
const first = (entries: Entries, type: SessionFact["type"], after = 0): LogEntry => {
  const entry = entries.find((e) => e.fact.type === type && e.n > after);
  if (!entry) throw new Error(`No ${type}.`);
  return entry;
};
const set =
  (type: SessionFact["type"], change: object, after = 0) =>
  (entries: Entries) => {
    const entry = first(entries, type, after);
    entry.fact = { ...entry.fact, ...change } as SessionFact;
  };
const drop =
  (type: SessionFact["type"], after = 0) =>
  (entries: Entries) => {
    entries.splice(entries.indexOf(first(entries, type, after)), 1);
  };
/** Puts a fact behind the first of that type, in the same event. */
const add =
  (type: SessionFact["type"], fact: object, after = 0) =>
  (entries: Entries) => {
    const entry = first(entries, type, after);
    const { witnessedMs: _w, ...stamp } = { witnessedMs: 0, cause: entry.fact.cause };
    entries.splice(entries.indexOf(entry) + 1, 0, {
      ...entry,
      fact: { witnessedMs: 0, ...stamp, ...fact } as SessionFact,
    });
  };
/** Numbers the events anew, as a careful forger would. */
const renumber = (change: (entries: Entries) => void) => (entries: Entries) => {
  change(entries);
  let old = -1;
  let cause = -1;
  entries.forEach((entry, i) => {
    if (entry.fact.cause !== old) cause = i;
    old = entry.fact.cause;
    entry.fact = { ...entry.fact, cause } as SessionFact;
  });
};
type Forgery = [story: string, change: (entries: Entries) => void, code: BreachCode];

const forgeries: Forgery[] = [
  ["the beginning left out", renumber(drop("v1.SessionBegan")), "not-begun"],
  ["a second beginning", renumber(add("v1.StepDone", { type: "v1.SessionBegan", today: "2026-11-25" })), "not-begun"],
  ["something after the close", add("v1.SessionClosed", { type: "v1.EarBack" }), "after-close"],
  ["facts dropped without numbering anew", drop("v1.TimeWitnessed"), "cause-order"],
  ["an event numbered ahead", set("v1.Undone", { cause: 900 }), "cause-order"],
  ["monotonic time that runs back", (e) => void Object.assign(first(e, "v1.Undone"), { monoMs: 1 }), "time-ran-back"],
  ["more time watched than went by", set("v1.TimeWitnessed", { witnessedMs: 120_000 }), "time-not-watched"],
  [
    "a tick longer for each heartbeat",
    (e) => {
      for (const entry of e) if (entry.fact.witnessedMs === 10_000) entry.fact = { ...entry.fact, witnessedMs: 11_000 };
    },
    "short-by-differs",
  ],
  [
    "more time watched than the new page has lived",
    (e) => {
      const at = e.indexOf(first(e, "v1.TimeWitnessed"));
      for (const entry of e.slice(at)) Object.assign(entry, { life: lifeB, monoMs: 10 });
    },
    "gap-left-out",
  ],
  [
    "a reload in the set-up that watched before it began",
    (e) => {
      const at = e.indexOf(first(e, "v1.PhaseEntered", 20));
      for (const entry of e.slice(at)) Object.assign(entry, { life: lifeB, monoMs: 10 });
    },
    "time-not-watched",
  ],
  ["a shorter contact time than the label's", set("v1.WetClockStarted", { neededMs: 60_000 }), "step-facts-differ"],
  ["no re-application where the label asks", set("v1.WetClockStarted", { reapplyWithinMs: null }), "step-facts-differ"],
  ["another product than the protocol's", set("v1.WetClockStarted", { product: "water" }), "step-facts-differ"],
  ["a clock on a surface that no product goes on", set("v1.WetClockStarted", { surface: "cup" }), "step-facts-differ"],
  [
    "a clock by no step, for less than the label's time",
    renumber(
      add("v1.FlowEnded", {
        type: "v1.WetClockStarted",
        surface: "chair",
        product: "spray",
        neededMs: 60_000,
        reapplyWithinMs: 120_000,
      }),
    ),
    "label-differs",
  ],
  ["more credit than was watched", set("v1.WetClockTimeUp", { creditedMs: 200_000 }), "credit-differs"],
  ["less credit than was watched", set("v1.WetClockTimeUp", { creditedMs: 1 }), "credit-differs"],
  [
    "time up at half the time, credit and all",
    (e) => {
      const entry = first(e, "v1.ReapplyDue");
      // Where re-application is asked for: 120 s by the label, less the lead.
      const creditedMs = 120_000 - reapplyLeadMs;
      entry.fact = {
        type: "v1.WetClockTimeUp",
        surface: "chair",
        creditedMs,
        witnessedMs: 10_000,
        cause: entry.fact.cause,
      };
    },
    "ready-early",
  ],
  [
    "a re-application that never was",
    set("v1.WetClockReapplied", { type: "v1.TimeWitnessed", surface: undefined }, 66),
    "ready-early",
  ],
  [
    "ready before time is up",
    set("v1.WetClockTimeUp", { type: "v1.WetClockReady", creditedMs: undefined }),
    "clock-state",
  ],
  ["trusted without a doubt", set("v1.WetClockReady", { type: "v1.WetClockTrusted" }), "clock-state"],
  ["ready for another surface", set("v1.WetClockReady", { surface: "lamp" }), "clock-state"],
  ["re-application of a clock that is not there", set("v1.WetClockReapplied", { surface: "cup" }), "clock-state"],
  ["re-application asked for too soon", set("v1.ReapplyDue", { surface: "lamp" }), "clock-state"],
  ["lapsed when it was not", set("v1.ReapplyDue", { type: "v1.WetClockLapsed" }), "clock-state"],
  ["found dry while counting", set("v1.ReapplyDue", { type: "v1.WetClockDried" }), "clock-state"],
  ["wiped while it counts", set("v1.WipedEarly", { type: "v1.SurfaceWiped", shortByMs: undefined }), "clock-state"],
  ["the yes left out", renumber(drop("v1.WetClockReady")), "step-facts-differ"],
  ["wiped early by less than it was", set("v1.WipedEarly", { shortByMs: 1000 }), "short-by-differs"],
  ["wiped early by more than it was", set("v1.WipedEarly", { shortByMs: 170_000 }), "short-by-differs"],
  ["the deviation of an early wipe left out", renumber(drop("v1.Deviation", 60)), "event-facts-differ"],
  ["the deviation of a touch left out", renumber(drop("v1.Deviation", 22)), "event-facts-differ"],
  ["the deviation of a touch softened", set("v1.Deviation", { code: "problemReported" }, 22), "event-facts-differ"],
  ["the deviation of a touch moved to another item", set("v1.Deviation", { item: "chair" }, 22), "event-facts-differ"],
  ["a step left out made one for the client", set("v1.Deviation", { code: "problemReported" }, 6), "step-facts-differ"],
  ["the deviation of a step left out dropped", renumber(drop("v1.Deviation", 6)), "step-facts-differ"],
  [
    "a problem without its deviation",
    renumber(add("v1.StepEntered", { type: "v1.ProblemReported", step: null })),
    "event-facts-differ",
  ],
  ["another step read than the list has", set("v1.StepEntered", { step: "lastWash" }), "step-differs"],
  ["a check that was never answered", renumber(drop("v1.StepDone", 8)), "step-differs"],
  ["another place in the list", set("v1.StepEntered", { index: 5 }), "step-differs"],
  ["a flow's step where no flow is", set("v1.StepEntered", { list: "flow" }), "step-differs"],
  [
    "a plan that wipes before it wets",
    renumber(
      add("v1.SharpsCounted", {
        type: "v1.PlanChosen",
        order: smallProtocol.breakdown.map((s) => s.id).toReversed(),
      }),
    ),
    "plan-not-sound",
  ],
  ["a step done that was not asked for", set("v1.StepDone", { step: "lastWash" }), "step-differs"],
  ["a step done that the protocol has not", set("v1.StepDone", { step: "polish" }), "step-differs"],
  ["a hand wash done without being stated", renumber(drop("v1.StepDone", 86)), "step-differs"],
  ["a wet clock that a step should have started", renumber(drop("v1.WetClockStarted")), "step-facts-differ"],
  ["a wipe that a step should have stated", renumber(drop("v1.SurfaceWiped")), "step-facts-differ"],
  [
    "a step left out that guards health",
    (e) => {
      const entry = first(e, "v1.StepDone");
      const { cause } = entry.fact;
      entry.fact = { type: "v1.StepSkipped", step: "washHands", reason: "notForClient", witnessedMs: 0, cause };
    },
    "not-skippable",
  ],
  ["another step left out than the one asked for", set("v1.StepSkipped", { step: "coverBoth" }), "step-differs"],
  [
    "the work begun before the set-up is walked",
    renumber(add("v1.StepDone", { type: "v1.PhaseEntered", phase: "procedure" })),
    "gate-not-met",
  ],
  [
    "the breakdown entered twice",
    renumber(add("v1.PhaseEntered", { type: "v1.PhaseEntered", phase: "breakdown" }, 34)),
    "phase-order",
  ],
  ["the dressing passed over", set("v1.PhaseEntered", { phase: "dressing" }, 2), "phase-order"],
  ["a set-up entered again", renumber(add("v1.Undone", { type: "v1.PhaseEntered", phase: "setUp" })), "phase-order"],
  ["fewer sharps expected than opened", set("v1.SharpsCounted", { expected: 0, inContainer: 0 }), "count-differs"],
  ["more sharps expected than opened", set("v1.SharpsCounted", { expected: 2 }), "count-differs"],
  ["an undo of something else", set("v1.Undone", { fromCause: 3 }), "undo-differs"],
  [
    "an undo with nothing to undo",
    renumber(add("v1.SharpsCounted", { type: "v1.Undone", fromCause: 0 }, 0)),
    "undo-differs",
  ],
  [
    "an exposure ended that never was",
    renumber(add("v1.FlowEnded", { type: "v1.ExposureEnded", outcome: "ended" })),
    "exposure-order",
  ],
  [
    "an exposure answered that never was",
    renumber(add("v1.FlowEnded", { type: "v1.ExposureAnswered", choice: "end" })),
    "exposure-order",
  ],
  [
    "an exposure resumed that never was",
    renumber(add("v1.FlowEnded", { type: "v1.ExposureEnded", outcome: "resumed" })),
    "exposure-order",
  ],
  ["sharps closed as not balanced when they were", set("v1.SessionClosed", { balanced: false }), "close-differs"],
  ["something unready that was ready", set("v1.SessionClosed", { unready: ["lamp"] }), "close-differs"],
  [
    "closed with the last steps left",
    renumber((e) => void e.splice(e.findIndex((entry) => entry.fact.type === "v1.SurfaceWiped") + 1, 7)),
    "close-differs",
  ],
];

const forge = async (change: (entries: Entries) => void) => {
  const copy = structuredClone(recordOf(kept));
  change(copy.entries);
  return verifyRecord(recordText(await remade(copy, signer)));
};

test("the record that is forged from passes when it is only made anew", async () => {
  expect(await forge(() => undefined)).toMatchObject({ intact: { ok: true }, follows: { ok: true } });
});

test.each(forgeries)("finds %s", async (_story, change, code) => {
  const verdict = await forge(change);
  expect([verdict.intact.ok, verdict.signedBy.ok]).toEqual([true, true]);
  expect(verdict.follows).toMatchObject({ ok: false, code });
});

test("finds a count that was closed as balanced while it differed", async () => {
  const difference: SessionEvent[] = wholeSession.flatMap((event, i) =>
    i === wholeSession.findIndex((e, at) => e.type === "answer.confirm" && at > 20)
      ? [
          { type: "sharps.counted", inContainer: 0 },
          { type: "sharps.counted", inContainer: 0 },
          { type: "sharps.explained", reason: "lost" },
        ]
      : [event],
  );
  const other = await live(input, difference, signer);
  const copy = structuredClone(recordOf(other.kept));
  const last = copy.entries.at(-1) as LogEntry;
  expect(last.fact).toMatchObject({ type: "v1.SessionClosed", balanced: false });
  last.fact = { ...last.fact, balanced: true } as SessionFact;
  const verdict = await verifyRecord(recordText(await remade(copy, signer)));
  expect(verdict.follows).toMatchObject({ code: "close-differs", at: { part: "entry", n: last.n } });
});

test("has a forgery for every code but the summary's, which has its own test", () => {
  const missing = breachCodes.filter((code) => !forgeries.some((forgery) => forgery[2] === code));
  expect(missing).toEqual(["summary-differs"]);
});
