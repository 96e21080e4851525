/**
 * An artist who takes the protocol's own seconds for each step, wets again when asked, and answers what is asked, on the
 * real companion, second by second. For measuring how long a breakdown takes as it is led, and for tests of leading.
 */
import { resume } from "../../machines/session/decide";
import { type Companion, createCompanion } from "../../src/app/companion";
import { Monitor } from "../../src/check/monitor";
import type { SessionFact } from "../../src/session/fact";
import type { Pen } from "../../src/session/keeper";
import type { Label, Protocol, Step } from "../../src/session/protocol";
import type { SessionInput } from "../../src/session/sessionInput";
import { stepHere } from "../../src/session/world";
import { reapplySec, waitsForWet } from "../../src/turnaround/breakdown/derive";
import type { PlannerPort } from "../../src/turnaround/plannerPort";
import { createScriptedVoice, type ScriptedVoice } from "./scriptedVoice";

export interface Worked {
  /** From the first step of the breakdown to the last done and nothing wet, seconds. */
  readonly sec: number;
  /** Of these, with nothing to do but wait. */
  readonly idleSec: number;
  readonly rewettings: number;
}

/** Every fact of a session up to the first step of its breakdown. */
export function factsToBreakdown(protocol: Protocol): { input: SessionInput; facts: readonly SessionFact[] } {
  const m = new Monitor(protocol);
  for (let i = 0; i < 400 && m.world.phase !== "dressing"; i++) {
    const here = m.here();
    if (here) m.perform(here);
    else if (m.world.phase === "procedure") m.tell({ type: "procedure.finish" });
    else {
      m.waitFor(Object.keys(m.world.clocks));
      m.tell({ type: "step.done" });
    }
  }
  for (let i = 0; i < 100 && m.world.phase === "dressing"; i++) m.perform(m.here() as Step);
  return { input: m.input, facts: m.facts };
}

/** The protocol's surface disinfectants with another label. */
export const relabelled = (protocol: Protocol, change: Partial<Label>): Protocol => ({
  ...protocol,
  products: protocol.products.map((p) =>
    p.use === "surfaceDisinfectant" ? { ...p, label: { ...p.label, ...change } } : p,
  ),
});

export interface AtBreakdown {
  readonly companion: Companion;
  readonly voice: ScriptedVoice;
  /** Facts of the whole session so far. */
  readonly facts: readonly SessionFact[];
}

/** The last step before the breakdown is still to be told done, so that the companion hears it begin. */
export async function beginBreakdown(protocol: Protocol, planner?: PlannerPort): Promise<AtBreakdown> {
  const { input, facts: before } = factsToBreakdown(protocol);
  const lastStep = before.findLastIndex((f) => f.type === "v1.StepDone");
  const facts = before.slice(0, lastStep);
  const pen: Pen = {
    append: async (more) => {
      facts.push(...more);
      return { ok: true };
    },
  };
  const voice = createScriptedVoice({ format: "gloveside-clips", formatVersion: 1, language: "en", clips: {} });
  const companion = createCompanion({ state: resume(input, facts), pen, voice, ...(planner ? { planner } : {}) });
  await companion.tell({ type: "step.done" }, screen);
  return { companion, voice, facts };
}

const screen = { by: "touch" } as const;

/** @param foundDry surfaces of which the first "stayed wet?" is answered with no */
export async function workThrough(
  { companion, voice }: AtBreakdown,
  { mostSec = 7_200, foundDry = [] }: { mostSec?: number; foundDry?: readonly string[] } = {},
): Promise<Worked> {
  let monoMs = 0;
  let idleSec = 0;
  let rewettings = 0;
  const once = new Set(foundDry);
  const settled = () => new Promise<void>((turn) => setImmediate(turn));
  const second = async (): Promise<void> => {
    monoMs += 1_000;
    voice.pass(1_000);
    await companion.tick({ monoMs, wallMs: monoMs }, "2026-01-01");
    // What the planner answers is told to the session before the next second.
    await settled();
  };
  const busy = async (sec: number): Promise<void> => {
    for (let i = 0; i < sec; i++) await second();
  };
  await companion.tick({ monoMs, wallMs: monoMs }, "2026-01-01");
  await settled();
  while (monoMs < mostSec * 1_000) {
    await settled();
    const { state } = companion;
    const { input, world } = state.context;
    const clocks = Object.values(world.clocks);
    const asked = clocks.filter((c) => c.state === "timeUp" || c.state === "doubtful");
    const toWet = clocks.filter(
      (c) => c.state === "dry" || (c.state === "counting" && (c.reapplyAsked || c.reapplyPlanned)),
    );
    const step = stepHere(input, world);
    if (asked.length > 0) {
      for (const { surface } of asked) {
        await companion.tell({ type: once.delete(surface) ? "answer.no" : "answer.yes", surface }, screen);
      }
    } else if (toWet.length > 0) {
      // What one step wets is one piece of work, and is told when it is done.
      const wants = (s: Step) => s.effects.some((e) => e.verb === "apply" && toWet.some((c) => c.surface === e.item));
      const wets = input.protocol.breakdown.find(wants) as Step;
      await busy(reapplySec(wets));
      rewettings += 1;
      for (const e of wets.effects)
        if (e.verb === "apply") await companion.tell({ type: "surface.applied", surface: e.item }, screen);
    } else if (state.matches({ conversation: { readBack: "sharps" } })) {
      await busy(step?.handsOnSec ?? 0);
      await companion.tell({ type: "answer.confirm" }, screen);
    } else if (step === null) return { sec: monoMs / 1_000, idleSec, rewettings };
    else if (waitsForWet(step, world)) {
      idleSec += 1;
      await second();
    } else {
      await busy(step.handsOnSec);
      if (stepHere(input, companion.state.context.world) === step) await companion.tell({ type: "step.done" }, screen);
    }
  }
  return { sec: Number.POSITIVE_INFINITY, idleSec, rewettings };
}
