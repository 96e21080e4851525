/** Is this a whole session of its protocol: every step done once, nothing refused, closed with the sharps balanced? */
import type { SessionFact } from "../session/fact";
import type { Protocol } from "../session/protocol";

export interface Wholeness {
  readonly steps: number;
  readonly missedSteps: readonly string[];
  readonly refused: readonly string[];
  readonly isClosed: boolean;
  /** Items not ready for the next session at the close. */
  readonly unready: readonly string[];
}

export function wholenessOf(protocol: Protocol, facts: readonly SessionFact[]): Wholeness {
  const steps = [...protocol.setUp, ...protocol.dressing, ...protocol.breakdown].map(({ id }) => id);
  const done = new Set(facts.flatMap((fact) => (fact.type === "v1.StepDone" ? [fact.step] : [])));
  const close = facts.find((fact) => fact.type === "v1.SessionClosed");
  return {
    steps: steps.length,
    missedSteps: steps.filter((id) => !done.has(id)),
    refused: facts.flatMap((fact) => (fact.type === "v1.Refused" ? [`${fact.request}: ${fact.reason}`] : [])),
    isClosed: close?.balanced === true,
    unready: close?.unready ?? [],
  };
}
