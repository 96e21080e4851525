/** Moves told to the monitor one by one, as a person would: waiting out clocks, naming nothing, confirming what is read back. */
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { SessionFact } from "../session/fact";
import type { Protocol, Step } from "../session/protocol";
import { isGloved } from "../session/station";
import { behindHere } from "../turnaround/breakdown/planIsSound";
import { handsAtClose, thingAtClose } from "./closing";
import { dueAfter, type Move } from "./graph";
import { Monitor, patience, type Touched } from "./monitor";
import type { RuleId } from "./rules";
import { atWork } from "./sharps";

export interface Told {
  /** Rules broken at the last move; none of the moves before it broke one. */
  readonly broken: readonly RuleId[];
  /** The move where it stopped: a rule was broken there, or the chart would not follow. */
  readonly at: number;
  readonly stuck: boolean;
  /** Every effect in order, with the hands after it. */
  readonly touched: readonly Touched[];
  /** What was said to the chart, waiting left out. */
  readonly events: readonly SessionEvent[];
  readonly facts: readonly SessionFact[];
}

/** Tells the moves one by one, and stops at the first that breaks a rule. */
export function tell(protocol: Protocol, moves: readonly Move[]): Told {
  const m = new Monitor(protocol);
  for (const [at, move] of moves.entries()) {
    const { broken, stuck } = tellOne(m, move);
    if (broken.length > 0 || stuck || at === moves.length - 1) {
      return { broken, at, stuck, touched: m.touched, events: m.events, facts: m.facts };
    }
  }
  return { broken: [], at: -1, stuck: true, touched: m.touched, events: m.events, facts: m.facts };
}

interface Answered {
  readonly broken: readonly RuleId[];
  readonly stuck: boolean;
}
const fine: Answered = { broken: [], stuck: false };
const stuck: Answered = { broken: [], stuck: true };

export function tellOne(m: Monitor, move: Move): Answered {
  switch (move.kind) {
    case "done":
    case "skipped": {
      const ended = walkTo(m, move.step);
      if (ended !== null) return ended;
      const { broken } = m.judge(move.step);
      if (broken.length > 0) return { broken, stuck: false };
      if (move.kind === "done") return m.perform(move.step) ? flowEnded(m) : stuck;
      m.tell({ type: "step.skip" });
      const facts = m.tell({ type: "reason.given", reason: "ownDecision" });
      return facts.some((f) => f.type === "v1.StepSkipped") ? flowEnded(m) : stuck;
    }
    case "event": {
      passEmptySteps(m);
      m.report(move.event);
      const due = dueAfter(move.event);
      if (due) m.makeDue(due);
      return fine;
    }
    case "finish":
      passEmptySteps(m);
      m.tell({ type: "procedure.finish" });
      return m.world.phase === "dressing" ? fine : stuck;
    case "exposure": {
      m.tell({ type: "exposure.reported" });
      m.tell({ type: "session.resume" });
      // With a sharp out, gloves have to go on whatever the hands were.
      const { gloved, sharpsOut } = m.world.accident;
      if (m.world.placeBefore === null) m.spill();
      m.makeDue(m.world.placeBefore === null || gloved || sharpsOut ? "gloves" : "hands");
      return m.world.exposure === "resuming" ? fine : stuck;
    }
    case "close":
      passEmptySteps(m);
      return closed(m);
  }
}

/** Steps that do nothing to hands or things are answered on the way. */
function walkTo(m: Monitor, step: Step): Answered | null {
  for (let i = 0; i < patience; i += 1) {
    const here = m.here();
    if (here?.id === step.id) return null;
    if (here !== null && here.effects.length > 0 && planned(m, step)) return null;
    if (here === null) {
      // Only a wet surface keeps the work from beginning.
      m.waitFor(Object.keys(m.world.clocks));
      if (m.tell({ type: "step.done" }).every((f) => f.type === "v1.Refused")) return stuck;
      continue;
    }
    if (here.effects.length > 0 || !m.perform(here)) return stuck;
  }
  return stuck;
}

/** The breakdown goes on with this step, where the plan may choose so. */
function planned(m: Monitor, step: Step): boolean {
  const { protocol } = m.input;
  if (m.world.place?.list !== "breakdown" || !protocol.breakdown.includes(step)) return false;
  const behind = behindHere(m.input, m.world).map((s) => s.id);
  const rest = (m.world.order ?? protocol.breakdown.map((s) => s.id)).filter((id) => !behind.includes(id));
  m.tell({ type: "plan.chosen", order: [...behind, step.id, ...rest.filter((id) => id !== step.id)] });
  return m.here()?.id === step.id;
}

/** A flow told in the middle of something: what is left of it does nothing to hands or things. */
function passEmptySteps(m: Monitor): void {
  const isOver = () =>
    m.world.flows.length > 1 ||
    (m.world.place !== null && m.world.flows.length > 0) ||
    m.world.place?.list === "resuming";
  for (let i = 0; i < patience && isOver(); i += 1) {
    const here = m.here();
    if (!here || here.effects.length > 0 || !m.perform(here)) return;
  }
  if (m.world.phase === "setUp" && m.here() === null) {
    m.waitFor(Object.keys(m.world.clocks));
    m.tell({ type: "step.done" });
  }
}

/** Work begins or goes on: bare hands, gloves that are due, or no needle in them may not come there from a flow. */
function flowEnded(m: Monitor): Answered {
  const ended = leftFlow(m);
  const { phase, place, flows } = m.world;
  const came = m.facts.findLast(
    (f) => f.type === "v1.PhaseEntered" || f.type === "v1.FlowEnded" || f.type === "v1.ExposureEnded",
  );
  const isAtWork = phase === "procedure" && place === null && flows.length === 0 && came?.cause === m.world.cause;
  if (ended.broken.length > 0 || !isAtWork) return ended;
  if (came.type === "v1.FlowEnded" && came.event === "stopEarly") return { broken: ["stopMeansStop"], stuck: false };
  const broken = atWork(m.sharps(), isGloved(m.hands().hands));
  return { broken, stuck: false };
}

/** Bare hands, or gloves that are due, may not leave a flow. */
function leftFlow(m: Monitor): Answered {
  const last = m.facts.findLast((f) => f.type === "v1.FlowEnded" || f.type === "v1.ExposureEnded");
  const isNow = last !== undefined && last.cause === m.world.cause && "cause" in last;
  if (!isNow) return fine;
  if (last.type === "v1.FlowEnded" && last.event === "clientLeaves" && m.hasOpenWound()) {
    return { broken: ["woundCovered"], stuck: false };
  }
  if (last.type === "v1.ExposureEnded" && m.hasSpilt()) return { broken: ["bloodiedOut"], stuck: false };
  const stops = last.type === "v1.FlowEnded" && m.world.phase === "dressing" && m.world.place?.index === 0;
  if (stops) return fine;
  const hands = m.hands();
  if (hands.hands === "bare") return { broken: ["handsAfterGloves"], stuck: false };
  return hands.due === "gloves" ? { broken: ["damagedOrSoiledGlovesChanged"], stuck: false } : fine;
}

function closed(m: Monitor): Answered {
  m.waitFor(Object.keys(m.world.clocks));
  const broken: RuleId[] = [...handsAtClose(m.hands())];
  for (const [id, { item }] of m.station.about) broken.push(...thingAtClose(m.thing(id), item));
  const sharps = m.sharps();
  if (sharps.used + sharps.parked > 0) broken.push("sharpsCounted");
  const refused = m
    .tell({ type: "session.close" })
    .some((f) => f.type === "v1.Refused" && f.reason === "sharpsNotSettled");
  if (refused) broken.push("sharpsCounted");
  const facts = m.tell({ type: "answer.confirm" });
  const said = facts.find((f) => f.type === "v1.SessionClosed");
  const isOut = (id: string): boolean => m.world.station.items[id]?.at === "taggedOut";
  const unready = said?.type === "v1.SessionClosed" ? said.unready.filter((id) => !isOut(id)) : [];
  if (unready.length > 0 && broken.length === 0) {
    throw new Error(`The session lists ${unready.join(", ")} as not ready, and no rule says why.`);
  }
  return { broken: [...new Set(broken)], stuck: said === undefined && broken.length === 0 };
}
