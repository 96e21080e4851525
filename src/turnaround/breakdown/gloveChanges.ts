/** Runs of steps that are only hands and gloves, with the work on either side of each, up to the next run. */
import type { Step } from "../../session/protocol";
import { isHandStep } from "./rules";

export interface HandRun {
  readonly steps: readonly Step[];
  readonly before: readonly Step[];
  readonly after: readonly Step[];
}

export function runsOfHands(steps: readonly Step[]): HandRun[] {
  const stretches: { isHands: boolean; steps: Step[] }[] = [];
  for (const step of steps) {
    const last = stretches.at(-1);
    if (last && last.isHands === isHandStep(step)) last.steps.push(step);
    else stretches.push({ isHands: isHandStep(step), steps: [step] });
  }
  return stretches.flatMap(({ isHands, steps: run }, at) =>
    isHands ? [{ steps: run, before: stretches[at - 1]?.steps ?? [], after: stretches[at + 1]?.steps ?? [] }] : [],
  );
}

/** Gloves off, hands washed or rubbed, fresh gloves on. */
export function isChange(steps: readonly Step[]): boolean {
  const verbs = steps.flatMap((s) => s.effects.map((e) => e.verb));
  const off = verbs.indexOf("doff");
  const hygiene = verbs.findIndex((v, at) => at > off && (v === "wash" || v === "rub"));
  return off === 0 && hygiene > off && verbs.indexOf("don") > hygiene && verbs.at(-1) === "don";
}
