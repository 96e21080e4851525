import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { type CommandId, commandIds } from "../../intent/phrases";
import type { Heard } from "../heard";
import { Decision } from "./decision";
import { usualSettings } from "./settings";

type Scores = Partial<Record<CommandId, number>>;
const stepMs = 80;
const row = (scores: Scores) => commandIds.map((id) => scores[id] ?? 0);
const quiet: Scores = {};

/** Runs rows of scores, 80 ms apart, from `fromMs`; gives all that was heard. */
function listen(decision: Decision, rows: readonly Scores[], fromMs = 0): readonly Heard[] {
  return rows.flatMap((scores, n) => decision.step(fromMs + n * stepMs, row(scores)) ?? []);
}
const listening = (...allowed: CommandId[]) => {
  const decision = new Decision("station", usualSettings);
  decision.allow(allowed);
  return decision;
};
const held = (scores: Scores, steps: number): readonly Scores[] => Array.from({ length: steps }, () => scores);
const commandsOf = (heard: readonly Heard[]) => heard.map((h) => (h.kind === "understood" ? h.command : h.kind));

describe("deciding what was heard", () => {
  test("understands a command that is sure for two steps, at the time of the second", () => {
    const heard = listen(listening("done", "back"), [quiet, quiet, { done: 0.9 }, { done: 0.9 }]);
    expect(heard).toEqual([
      { kind: "understood", address: "station", command: "done", confidence: 0.9, permitted: true, atMs: 240 },
    ]);
  });

  test("says a phrase once, however long its probability stays high", () => {
    expect(commandsOf(listen(listening("done"), [quiet, quiet, ...held({ done: 0.99 }, 40)]))).toEqual(["done"]);
  });

  test("hears the same phrase again after it has fallen away", () => {
    const twice = [quiet, quiet, ...held({ done: 0.99 }, 4), ...held(quiet, 12), ...held({ done: 0.99 }, 4)];
    expect(commandsOf(listen(listening("done"), twice))).toEqual(["done", "done"]);
  });

  test("does not act on one sure step alone", () => {
    expect(commandsOf(listen(listening("done"), [quiet, quiet, { done: 1 }, quiet, quiet]))).toEqual([]);
  });

  test("asks when two commands stay level", () => {
    const heard = listen(listening("done", "back", "again"), [quiet, quiet, ...held({ done: 0.5, back: 0.42 }, 6)]);
    expect(heard).toEqual([
      { kind: "unsure", address: "station", candidates: ["done", "back"], confidences: [0.5, 0.42], atMs: 480 },
    ]);
  });

  test("does not ask when one of the two wins in time", () => {
    const rows = [quiet, quiet, ...held({ done: 0.5, back: 0.42 }, 3), ...held({ done: 0.95 }, 3)];
    expect(commandsOf(listen(listening("done", "back"), rows))).toEqual(["done"]);
  });

  test("does not ask about a rival that is not listened for", () => {
    const rows = [quiet, quiet, ...held({ done: 0.5, back: 0.42 }, 6)];
    expect(commandsOf(listen(listening("done"), rows))).toEqual([]);
  });

  test("reports a near miss as noise, once it is over", () => {
    const heard = listen(listening("done"), [quiet, quiet, ...held({ done: 0.6 }, 5), ...held(quiet, 4)]);
    expect(commandsOf(heard)).toEqual(["noise"]);
  });

  test("hears a command that can only be refused, when it is surer than usual", () => {
    const decision = new Decision("station", usualSettings);
    decision.allow(["done"], ["close"]);
    expect(listen(decision, [quiet, quiet, ...held({ close: 0.85 }, 4)])).toEqual([]);
    const heard = listen(decision, [...held(quiet, 3), ...held({ close: 0.95 }, 4)], 1000);
    expect(heard.filter((h) => h.kind === "understood")).toMatchObject([{ command: "close", permitted: false }]);
  });

  test("asks about what the companion says itself just now, and only when it is far surer than an echo", () => {
    const decision = listening("back", "done");
    decision.guard(["back"]);
    expect(listen(decision, [quiet, ...held({ back: 0.95 }, 6), ...held(quiet, 4)])).toMatchObject([{ kind: "noise" }]);
    const surely = listen(decision, [...held({ back: 0.99 }, 3), ...held(quiet, 20)], 1000);
    expect(surely).toMatchObject([{ kind: "unsure", candidates: ["back"] }]);
    expect(commandsOf(listen(decision, held({ done: 0.95 }, 3), 2000))).toEqual(["done"]);
    decision.guard(null);
    expect(commandsOf(listen(decision, [...held(quiet, 12), ...held({ back: 0.95 }, 3)], 3000))).toEqual(["back"]);
  });

  test("takes an accident, or to be quiet, as said, even while the companion says these words", () => {
    for (const command of ["accident", "hush"] as const) {
      const decision = listening(command);
      decision.guard([command]);
      expect(commandsOf(listen(decision, [quiet, ...held({ [command]: 0.99 }, 3)]))).toEqual([command]);
    }
  });

  test("needs to be surer of anything while the companion speaks at all, and asks about an accident where it is not", () => {
    const lenient = { ...usualSettings, thresholds: { ...usualSettings.thresholds, done: 0.5, accident: 0.5 } };
    const overSpeech = (saying: readonly CommandId[] | null, scores: Scores) => {
      const decision = new Decision("station", lenient);
      decision.allow(["done", "accident"]);
      decision.guard(saying);
      return commandsOf(listen(decision, [quiet, quiet, ...held(scores, 3)]));
    };
    expect(overSpeech(null, { done: 0.7 })).toEqual(["done"]);
    expect(overSpeech([], { done: 0.7 })).toEqual([]);
    expect(overSpeech([], { done: 0.85 })).toEqual(["done"]);
    expect(overSpeech([], { accident: 0.7 })).toEqual(["unsure"]);
    expect(overSpeech([], { accident: 0.85 })).toEqual(["accident"]);
  });

  test("shows what seems to be said, before it is acted on, and nothing once it was", () => {
    const decision = listening("done", "back");
    const seen = [quiet, quiet, { done: 0.7 }, { done: 0.7 }, { done: 0.95 }, { done: 0.99 }, { done: 0.99 }].map(
      (scores: Scores, n) => {
        const heard = decision.step(n * stepMs, row(scores));
        return heard?.kind ?? decision.rising?.command ?? null;
      },
    );
    expect(seen).toEqual([null, null, "done", "done", "understood", null, null]);
  });

  test("shows nothing of what is not listened for", () => {
    const decision = listening("back");
    listen(decision, [quiet, quiet, { done: 0.7 }, { done: 0.7 }]);
    expect(decision.rising).toBeNull();
  });

  test("does not act on what was said before it was allowed", () => {
    const decision = listening();
    listen(decision, [quiet, quiet, ...held({ close: 0.99 }, 3)]);
    decision.allow(["close"]);
    expect(listen(decision, held({ close: 0.99 }, 10), 5 * stepMs)).toEqual([]);
  });

  test("hears nothing right after a gap until it has heard something low", () => {
    const decision = listening("done");
    decision.reset();
    expect(listen(decision, held({ done: 0.99 }, 10), 800)).toEqual([]);
  });

  const anyScores = fc.dictionary(fc.constantFrom(...commandIds), fc.double({ min: 0, max: 1, noNaN: true }), {
    maxKeys: 4,
  });
  const anySet = fc.uniqueArray(fc.constantFrom(...commandIds), { maxLength: 10 });

  property.prop([fc.array(fc.tuple(anyScores, anySet), { minLength: 1, maxLength: 60 })])(
    "never gives a command that is not allowed at that moment, nor one below its threshold",
    (moments) => {
      const decision = listening();
      moments.forEach(([scores, allowed], n) => {
        decision.allow(allowed);
        const heard = decision.step(n * stepMs, row(scores as Scores));
        const named = heard?.kind === "understood" ? [heard.command] : heard?.kind === "unsure" ? heard.candidates : [];
        expect(named.every((id) => allowed.includes(id))).toBe(true);
        expect(heard?.kind === "understood" ? heard.confidence : 1).toBeGreaterThanOrEqual(0.8);
      });
    },
  );

  property.prop([fc.array(anyScores, { minLength: 1, maxLength: 120 })])(
    "never acts twice within the quiet time",
    (rows) => {
      const decision = listening(...commandIds);
      const times = rows
        .flatMap((scores, n) => decision.step(n * stepMs, row(scores as Scores)) ?? [])
        .filter((h) => h.kind !== "noise")
        .map((h) => h.atMs);
      expect(times.every((t, n) => n === 0 || t - (times[n - 1] ?? 0) >= usualSettings.refractoryMs)).toBe(true);
    },
  );
});
