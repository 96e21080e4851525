/** What is never allowed, whatever is said: sharps, hands, kept facts, read-backs, silent refusals. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect } from "vitest";
import { begin, decide, resume, standing } from "../../machines/session/decide";
import type { SessionEvent, Way } from "../../machines/session/vocabulary";
import { announce } from "../../src/announcements/announce";
import { en } from "../../src/announcements/en";
import type { SessionFact } from "../../src/session/fact";
import { foldAll } from "../../src/session/fold";
import { createKeeper } from "../../src/session/keeper";
import type { Protocol, Step } from "../../src/session/protocol";
import { stepById } from "../../src/session/world";
import { anyEnding, anySaid, anyStart, toTheEnd } from "../support/anyEvents";
import { begun, inputFor, type Run, today, told } from "../support/session";
import { smallProtocol } from "../support/smallProtocol";

const input = inputFor(smallProtocol);
const anySession = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(anyStart, fc.array(anySaid, { maxLength: 50 })).map(([a, b]) => [...a, ...b]) },
  { weight: 1, arbitrary: anyEnding.map((ending) => [...toTheEnd, ...ending]) },
);

/** Each event with the facts it stated and the state before it. */
function story(events: readonly SessionEvent[], from: Run = begun(input)) {
  let { state } = from;
  return events.map((event) => {
    const before = state;
    const { next, facts } = decide(state, event);
    state = next;
    return { event, before, after: next, facts };
  });
}

/** Facts that still stand: an undo takes away those of its event and all since. */
const standingFacts = (facts: readonly SessionFact[]): SessionFact[] => {
  let kept: SessionFact[] = [];
  for (const fact of facts) {
    if (fact.type === "v1.Undone") kept = kept.filter((f) => f.cause < fact.fromCause);
    else kept.push(fact);
  }
  return kept;
};

describe("the sharps", () => {
  property.prop([anySession], { numRuns: 400 })(
    "never close balanced unless every one opened was counted in",
    (events) => {
      const moments = story(events);
      const facts = standingFacts(moments.flatMap((m) => m.facts));
      const closed = facts.find((f) => f.type === "v1.SessionClosed");
      if (closed?.type !== "v1.SessionClosed") return;
      // A count of our own, from the steps alone: a step of a phase opens its needle once, a step of a flow each time.
      const inPhase = new Set(smallProtocol.setUp.map((s) => s.id));
      const seen = new Set<string>();
      let opened = 0;
      let lastCount: { expected: number; inContainer: number | null; opened: number } | null = null;
      for (const fact of facts) {
        if (fact.type === "v1.StepDone") {
          const repeats = inPhase.has(fact.step) && seen.has(fact.step);
          seen.add(fact.step);
          if (!repeats) opened += opens(stepById(input, fact.step));
        }
        if (fact.type === "v1.SharpsCounted") lastCount = { ...fact, opened };
      }
      const last = moments.find((m) => m.facts.some((f) => f.type === "v1.SessionClosed"));
      // Only an accident lets the close itself explain a difference.
      if (last?.facts.some((f) => f.type === "v1.SharpsDiscrepancy")) {
        expect(last.before.context.world.exposure).toBe("ended");
      }
      const explained = facts.some((f) => f.type === "v1.SharpsDiscrepancy");
      const balanced =
        opened === 0 || (lastCount !== null && lastCount.inContainer === opened && lastCount.opened === opened);
      expect(closed.balanced).toBe(balanced && !explained);
      expect(balanced || explained).toBe(true);
    },
  );
});

const opens = (step: Step | undefined): number => step?.effects.filter((e) => e.verb === "open").length ?? 0;

/** The small protocol with its steps in another order, and some of them gone: whatever a studio may write. */
const anyProtocol: fc.Arbitrary<Protocol> = fc
  .tuple(
    fc.shuffledSubarray([...smallProtocol.setUp], { minLength: 2 }),
    fc.shuffledSubarray([...smallProtocol.breakdown], { minLength: 2 }),
  )
  .map(([setUp, breakdown]) => ({ ...smallProtocol, setUp, breakdown }));

describe("hands and gloves", () => {
  property.prop([anyProtocol, fc.array(anySaid, { maxLength: 40 })], { numRuns: 300 })(
    "are never asked to be gloved unwashed, and gloves that went on all the same never count as clean",
    (protocol, events) => {
      const own = inputFor(protocol);
      let hands: "unwashed" | "washed" | "gloved" = "unwashed";
      for (const { before, facts, after } of story(events, begun(own))) {
        if (facts.some((f) => f.type === "v1.Undone"))
          hands = handsIn(before.context.world.before ?? before.context.world);
        for (const fact of facts) {
          const step =
            fact.type === "v1.StepDone" || fact.type === "v1.StepEntered" ? stepById(own, fact.step) : undefined;
          const verbs = step?.effects.map((e) => e.verb) ?? [];
          if (fact.type === "v1.StepEntered" && verbs.includes("don") && hands !== "washed") {
            const reason = hands === "gloved" ? "glovesStillOn" : "handsNotWashed";
            expect(facts.some((f) => f.type === "v1.Refused" && f.reason === reason)).toBe(true);
          }
          if (fact.type !== "v1.StepDone" || isRepeat(own, before, fact.step)) continue;
          for (const verb of verbs) {
            if (verb === "don" && hands !== "washed") {
              expect(facts.some((f) => f.type === "v1.Deviation" && f.code.startsWith("glovesOver"))).toBe(true);
              expect(after.context.world.station.hands).not.toBe("glovedClean");
            }
            if (verb === "wash") hands = hands === "gloved" ? "gloved" : "washed";
            if (verb === "doff") hands = "unwashed";
            if (verb === "don") hands = "gloved";
          }
        }
      }
    },
  );
});

const isRepeat = (own: ReturnType<typeof inputFor>, before: ReturnType<typeof begin>, step: string): boolean => {
  const { world } = before.context;
  const inList = [...own.protocol.setUp, ...own.protocol.dressing, ...own.protocol.breakdown].some(
    (s) => s.id === step,
  );
  return inList && world.done.includes(step);
};

const handsIn = (world: ReturnType<typeof foldAll>): "unwashed" | "washed" | "gloved" => {
  if (world.station.hands === "washed") return "washed";
  return world.station.hands === "bare" ? "unwashed" : "gloved";
};

describe("what was told as kept", () => {
  property.prop([anySession, fc.array(fc.boolean(), { minLength: 60, maxLength: 60 }), fc.nat({ max: 60 })], {
    numRuns: 150,
  })("is on disk, survives a kill, and nothing moves when a write fails", async (events, failures, killedAfter) => {
    const disk: SessionFact[] = [];
    let writes = 0;
    const keeper = createKeeper(begin(input), {
      append: async (facts) => {
        writes += 1;
        if (writes > 1 && failures[writes % failures.length]) {
          return { ok: false, code: "storage-full", message: "No room." };
        }
        disk.push(...facts);
        return { ok: true };
      },
    });
    const way: Way = { by: "keyboard" };
    await keeper.tell({ type: "session.begin", today }, way);
    for (const event of events.slice(0, killedAfter)) {
      const before = keeper.state;
      const moment = await keeper.tell(event, way);
      if (!moment.kept) expect(keeper.state).toBe(before);
      if (!moment.kept) expect(announce(en, moment).map((u) => u.key)).toEqual(["notKept"]);
    }
    const again = resume(input, disk);
    expect(again.context.world).toEqual(keeper.state.context.world);
    expect(keeper.state.context.world).toEqual(foldAll(input, disk));
  });

  property.prop([anySession], { numRuns: 300 })("says where we stand, and the chart stands there", (events) => {
    for (const { after } of story(events)) {
      const { exposure, phase } = standing(input, after.context.world);
      expect(after.value).toMatchObject({ exposure, phase });
    }
  });
});

describe("what must be read back", () => {
  property.prop([anySession], { numRuns: 400 })(
    "is kept on the confirmation alone, and only after the read-back",
    (events) => {
      for (const { event, before, facts } of story(events)) {
        const readBack = before.matches({ conversation: "readBack" });
        const confirmed = event.type === "answer.confirm" && readBack;
        for (const fact of facts) {
          if (fact.type === "v1.SessionClosed") expect(confirmed).toBe(true);
          if (fact.type === "v1.ExposureEnded" && fact.outcome === "ended") expect(confirmed).toBe(true);
          // A number put in by hand is its own read-back: it stands on the screen as it was typed.
          if (fact.type === "v1.SharpsCounted" && fact.inContainer === fact.expected) {
            expect(confirmed || event.type === "sharps.counted").toBe(true);
          }
          if (
            fact.type === "v1.Undone" &&
            soiledThings(before) >
              soiledThings({ context: { world: before.context.world.before ?? before.context.world } })
          ) {
            expect(confirmed).toBe(true);
          }
        }
      }
    },
  );
});

const soiledThings = (state: { context: { world: ReturnType<typeof foldAll> } }): number =>
  Object.values(state.context.world.station.items).filter((i) => i.condition === "soiled").length;

const requests: ReadonlySet<SessionEvent["type"]> = new Set([
  "step.done",
  "step.back",
  "step.skip",
  "step.again",
  "procedure.finish",
  "session.close",
  "session.pause",
  "session.resume",
  "report.undo",
  "answer.yes",
  "answer.no",
  "answer.confirm",
  "reason.given",
  "ask.howLong",
]);

describe("a request", () => {
  property.prop([anySession], { numRuns: 400 })(
    "is never refused in silence: it moves something or is answered aloud",
    (events) => {
      for (const { event, before, after, facts } of story(events)) {
        if (!requests.has(event.type) || before.context.world.phase === "closed") continue;
        const moved =
          facts.some((f) => f.type !== "v1.Refused") || JSON.stringify(before.value) !== JSON.stringify(after.value);
        const said = announce(en, { kept: true, event, way: { by: "keyboard" }, before, after, facts });
        expect(moved || said.length > 0, `${event.type} at ${JSON.stringify(before.value)}`).toBe(true);
        if (facts.some((f) => f.type === "v1.Refused")) expect(said.length).toBeGreaterThan(0);
      }
    },
  );
});

describe("a report", () => {
  property.prop([anySession], { numRuns: 300 })(
    "of what happened is always kept, at once or once it is named",
    (events) => {
      for (const { event, before, after, facts } of story(events)) {
        if (event.type !== "event.reported" || before.context.world.phase === "closed") continue;
        const kept = facts.some((f) => f.type === "v1.EventReported");
        const asked =
          after.matches({ conversation: "naming" }) || after.matches({ conversation: { readBack: "exposureEnd" } });
        expect(kept || asked).toBe(true);
      }
    },
  );

  property.prop([anySession], { numRuns: 200 })(
    "taken back leaves the station as it was, but for the time that passed",
    (events) => {
      for (const { before, facts, after } of story(events)) {
        if (!facts.some((f) => f.type === "v1.Undone")) continue;
        expect(after.context.world.station).toEqual(before.context.world.before?.station);
        expect(after.context.world.sharps).toEqual(before.context.world.before?.sharps);
      }
      expect(told(begun(input), ...events).state.status).toBe("active");
    },
  );
});
