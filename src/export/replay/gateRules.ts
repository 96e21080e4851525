/** Gates: a phase is entered, sharps are counted and a session is closed only as the rules of the session let it. */
import type { Phase } from "../../session/fact";
import { unready } from "../../session/station";
import { flowHere, kindsIn, stepHere, type World } from "../../session/world";
import { breach, type Rule } from "./rule";

const cameFrom: Record<Phase, readonly Phase[]> = {
  setUp: ["setUp"],
  procedure: ["setUp"],
  dressing: ["procedure"],
  breakdown: ["setUp", "procedure", "dressing"],
  closed: [],
};

const noClockRuns = (world: World): boolean => Object.values(world.clocks).every((clock) => clock.state === "ready");

const phasesInOrder: Rule = ({ input, fact, before }) => {
  if (fact.type !== "v1.PhaseEntered") return null;
  if (!cameFrom[fact.phase].includes(before.phase) || (fact.phase === "setUp" && before.count !== 1)) {
    return breach("phase-order", cameFrom[fact.phase].join(" or "), before.phase);
  }
  if (fact.phase !== "procedure") return null;
  if (stepHere(input, before) !== null) return breach("gate-not-met", "the set-up walked", stepHere(input, before)?.id);
  return noClockRuns(before) ? null : breach("gate-not-met", "no wet clock running", Object.keys(before.clocks));
};

const countsWhatWasOpened: Rule = ({ fact, before }) => {
  if (fact.type !== "v1.SharpsCounted" || fact.expected === before.sharps.opened) return null;
  return breach("count-differs", before.sharps.opened, fact.expected);
};

const exposureInOrder: Rule = ({ input, fact, before }) => {
  if (fact.type === "v1.ExposureAnswered") {
    return before.exposure === "firstAid" ? null : breach("exposure-order", "firstAid", before.exposure);
  }
  if (fact.type !== "v1.ExposureEnded") return null;
  if (fact.outcome === "ended") {
    return before.exposure === "firstAid" ? null : breach("exposure-order", "firstAid", before.exposure);
  }
  if (before.exposure !== "resuming") return breach("exposure-order", "resuming", before.exposure);
  const walked = before.place?.list === "resuming" && flowHere(before) === null && stepHere(input, before) === null;
  return walked ? null : breach("gate-not-met", "all steps of resuming done", stepHere(input, before)?.id);
};

const closesInOrder: Rule = ({ input, fact, before }) => {
  if (fact.type !== "v1.SessionClosed") return null;
  const { sharps } = before;
  const isBalanced = sharps.opened === 0 || (sharps.counted === "balanced" && sharps.discrepancy === null);
  const left = [...new Set([...unready(before.station, kindsIn(input)), ...Object.keys(before.clocks)])];
  if (fact.balanced !== isBalanced)
    return breach("close-differs", { balanced: isBalanced }, { balanced: fact.balanced });
  if (JSON.stringify(fact.unready) !== JSON.stringify(left)) return breach("close-differs", left, fact.unready);
  if (before.phase !== "breakdown") return breach("gate-not-met", "breakdown", before.phase);
  if (before.exposure === "ended") return null;
  const settled = sharps.opened === 0 || sharps.counted === "balanced" || sharps.discrepancy !== null;
  if (stepHere(input, before) !== null) return breach("gate-not-met", "no step left", stepHere(input, before)?.id);
  if (!noClockRuns(before)) return breach("gate-not-met", "no wet clock running", Object.keys(before.clocks));
  return settled ? null : breach("gate-not-met", "sharps settled", sharps);
};

export const gateRules: readonly Rule[] = [phasesInOrder, countsWhatWasOpened, exposureInOrder, closesInOrder];
