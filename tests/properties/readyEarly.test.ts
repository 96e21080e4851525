/** Invariant: never ready early. A model much simpler than the chart keeps its own count of the watched, wet time. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect } from "vitest";
import { decide, resume, type SessionState } from "../../machines/session/decide";
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { SessionFact } from "../../src/session/fact";
import { watched } from "../../src/session/watch";
import { anyHappenings, anyStart, bothWet, type Happening } from "../support/anyEvents";
import { begun, inputFor, told } from "../support/session";
import { smallProtocol } from "../support/smallProtocol";

const input = inputFor(smallProtocol);

interface Wet {
  readonly neededMs: number;
  readonly withinMs: number | null;
  wetMs: number;
  sinceMs: number;
  trusted: boolean;
  attested: boolean;
}

/** Wet and watched, per surface, void on any doubt until somebody says otherwise. */
class WetModel {
  readonly wet = new Map<string, Wet>();

  passes(monoMs: number, wallMs: number): void {
    const believed = monoMs >= 0 && monoMs <= 5_000 && wallMs - monoMs <= 2_000 && monoMs - wallMs <= 2_000;
    for (const w of this.wet.values()) {
      if (!believed) w.trusted = false;
      if (believed && w.trusted) {
        w.wetMs += monoMs;
        w.sinceMs += monoMs;
      }
    }
  }

  reloads(): void {
    for (const w of this.wet.values()) w.trusted = false;
  }

  hears(fact: SessionFact, by: SessionEvent): void {
    switch (fact.type) {
      case "v1.WetClockStarted":
        this.wet.set(fact.surface, {
          neededMs: fact.neededMs,
          withinMs: fact.reapplyWithinMs,
          wetMs: 0,
          sinceMs: 0,
          trusted: true,
          attested: false,
        });
        return;
      case "v1.WetClockReapplied": {
        const w = this.wet.get(fact.surface);
        if (!w) return;
        // Re-applied on what nobody vouches for, or on what had its time: from zero.
        if (!w.trusted || w.wetMs >= w.neededMs || (w.withinMs !== null && w.sinceMs > w.withinMs)) w.wetMs = 0;
        Object.assign(w, { sinceMs: 0, trusted: true, attested: false });
        return;
      }
      case "v1.WetClockLapsed":
      case "v1.WetClockDried":
      case "v1.WipedEarly": {
        const w = this.wet.get(fact.surface);
        if (w) Object.assign(w, { wetMs: 0, trusted: false, attested: false });
        return;
      }
      case "v1.WetClockTrusted": {
        expect(by.type).toBe("answer.yes");
        const w = this.wet.get(fact.surface);
        if (w) w.trusted = true;
        return;
      }
      case "v1.WetClockReady": {
        expect(by.type).toBe("answer.yes");
        const w = this.wet.get(fact.surface);
        expect(w?.wetMs).toBeGreaterThanOrEqual(w?.neededMs ?? Number.POSITIVE_INFINITY);
        if (w) w.attested = true;
        return;
      }
      case "v1.SurfaceWiped":
        expect(this.wet.get(fact.surface)?.attested).toBe(true);
        this.wet.delete(fact.surface);
        return;
      default:
    }
  }
}

/** Undo is left out here: what it may restore is the business of the undo property. */
const plays = (happenings: readonly Happening[]): readonly Happening[] =>
  happenings.filter((h) => h.kind !== "said" || h.event.type !== "report.undo");

describe("a wet clock", () => {
  property.prop(
    [fc.oneof({ weight: 4, arbitrary: fc.constant(bothWet) }, { weight: 1, arbitrary: anyStart }), anyHappenings],
    { numRuns: 800 },
  )(
    "is never ready before its time was watched and its wetness attested, whatever is said and the clocks do",
    (start, happenings) => {
      const model = new WetModel();
      const run = begun(input);
      let state: SessionState = run.state;
      const facts: SessionFact[] = [...run.facts];
      const tell = (event: SessionEvent) => {
        const decision = decide(state, event);
        for (const fact of decision.facts) model.hears(fact, event);
        facts.push(...decision.facts);
        state = decision.next;
      };
      for (const event of start) tell(event);
      for (const happening of plays(happenings)) {
        if (happening.kind === "said") tell(happening.event);
        if (happening.kind === "passing") {
          model.passes(happening.monoMs, happening.wallMs);
          tell(watched({ monoMs: 0, wallMs: 0 }, happening));
        }
        if (happening.kind === "reload") {
          model.reloads();
          state = resume(input, facts);
          tell({ type: "time.gap", why: "reload" });
        }
      }
    },
  );

  property.prop([fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 400 })], { numRuns: 60 })(
    "never adds split wet periods up",
    (first, second) => {
      const wet = told(begun(input), ...stepsTo("wetChair"));
      const seconds = (n: number): SessionEvent[] =>
        Array.from({ length: n }, () => ({ type: "time.witnessed", elapsedMs: 1_000 }));
      const split = told(
        wet,
        ...seconds(Math.min(first, 100)),
        { type: "surface.wiped", surface: "chair" },
        { type: "surface.applied", surface: "chair" },
        ...seconds(Math.min(second, 100)),
      );
      expect(split.state.context.world.clocks.chair?.creditedMs).toBeLessThanOrEqual(Math.min(second, 100) * 1_000);
      expect(split.facts.map((f) => f.type)).not.toContain("v1.WetClockTimeUp");
    },
  );
});

function stepsTo(last: "wetChair"): SessionEvent[] {
  const done: SessionEvent = { type: "step.done" };
  const index = smallProtocol.breakdown.findIndex((s) => s.id === last);
  return [
    ...smallProtocol.setUp.map(() => done),
    { type: "procedure.finish" },
    ...smallProtocol.dressing.map(() => done),
    done,
    { type: "answer.confirm" },
    ...Array.from({ length: index - 1 }, () => done),
  ];
}
