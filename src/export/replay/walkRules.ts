/** The walk: each step is the protocol's own, and what it does to the station is stated whole, deviations included. */
import { eventHappened } from "../../../machines/session/answers";
import { hereEntered, stepsDone } from "../../../machines/session/statements";
import { canBeTaggedOut } from "../../session/station";
import { flowHere, indexHere, kindsIn, stepHere, stepsHere } from "../../session/world";
import { planIsSound } from "../../turnaround/breakdown/planIsSound";
import { breach, mustBegin, type Rule } from "./rule";

/** The step where the walk stands, with what stands in its way; or the one before it, read again. */
const entersItsStep: Rule = ({ input, fact, before, rest }) => {
  if (fact.type !== "v1.StepEntered") return null;
  const expected = hereEntered({ input, world: before });
  const index = indexHere(before) - 1;
  const earlier = stepsHere(input, before)[index];
  const list = flowHere(before) ? "flow" : before.place?.list;
  if (earlier && fact.step === earlier.id && fact.index === index && fact.list === list) return null;
  const first = expected[0];
  if (first?.type !== "v1.StepEntered" || first.step !== fact.step) return breach("step-differs", first, fact.step);
  return mustBegin("step-differs", rest, expected);
};

/** Steps read together are stated together: what must follow the first of them includes the others. */
const statesWhatItDoes: Rule = ({ input, fact, before, rest }) => {
  if (fact.type !== "v1.StepDone") return null;
  const here = stepHere(input, before)?.id;
  if (here !== fact.step) return breach("step-differs", here, fact.step);
  return mustBegin("step-facts-differ", rest, stepsDone({ input, world: before }));
};

const leavesOutOnlyWhatItMay: Rule = ({ input, fact, before, rest }) => {
  if (fact.type !== "v1.StepSkipped") return null;
  const step = stepHere(input, before);
  if (step?.id !== fact.step) return breach("step-differs", step?.id, fact.step);
  if (!step.skippable) return breach("not-skippable", "done", "left out");
  if (fact.reason === "notForClient") return null;
  const deviation = { type: "v1.Deviation", code: "stepLeftOut", item: null, step: fact.step };
  return mustBegin("step-facts-differ", rest, [deviation], 1);
};

const eventsStateTheirDeviation: Rule = ({ fact, rest }) =>
  fact.type === "v1.EventReported" ? mustBegin("event-facts-differ", rest, eventHappened(fact.event, fact.item)) : null;

const problemsStateTheirDeviation: Rule = ({ fact, rest }) => {
  if (fact.type !== "v1.ProblemReported") return null;
  const deviation = { type: "v1.Deviation", code: "problemReported", item: null, step: fact.step };
  return mustBegin("event-facts-differ", rest, [deviation], 1);
};

const earlyWipesStateTheirDeviation: Rule = ({ fact, rest }) => {
  if (fact.type !== "v1.WipedEarly") return null;
  const next = rest[1];
  const said = next?.type === "v1.Deviation" && next.code === "wipedEarly" && next.item === fact.surface;
  return said ? null : { ...breach("event-facts-differ", `wipedEarly of ${fact.surface}`, next), later: 1 };
};

const undoesTheLast: Rule = ({ fact, before }) => {
  if (fact.type !== "v1.Undone") return null;
  if (before.before !== null && before.beforeCause === fact.fromCause) return null;
  return breach("undo-differs", before.before === null ? "nothing to undo" : before.beforeCause, fact.fromCause);
};

/** A plan only puts in another order what the rules of order leave free, and never what lies behind. */
const plansSoundly: Rule = ({ input, fact, before }) => {
  if (fact.type !== "v1.PlanChosen" || planIsSound(input, before, fact.order)) return null;
  return breach("plan-not-sound", "an order that the rules allow", fact.order);
};

/** Only what is reusable and still here goes out of use, and only what is out of use comes back. */
const tagsWhatItMay: Rule = ({ input, fact, before }) => {
  if (fact.type === "v1.ItemOutOfUse" && !canBeTaggedOut(before.station, kindsIn(input), fact.item))
    return breach("event-facts-differ", "a reusable thing that is here", fact.item);
  if (fact.type === "v1.ItemBackInUse" && before.station.items[fact.item]?.at !== "taggedOut")
    return breach("event-facts-differ", "a thing that is out of use", fact.item);
  return null;
};

export const walkRules: readonly Rule[] = [
  entersItsStep,
  statesWhatItDoes,
  leavesOutOnlyWhatItMay,
  eventsStateTheirDeviation,
  problemsStateTheirDeviation,
  earlyWipesStateTheirDeviation,
  undoesTheLast,
  plansSoundly,
  tagsWhatItMay,
];
