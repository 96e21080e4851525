/** A breach told step by step, in the plain words of the trade, with the rule and its source. */
import type { EventId, Protocol, Step } from "../session/protocol";
import type { Move } from "./graph";
import { type RuleId, rules } from "./rules";
import type { Told } from "./telling";

const reports: Readonly<Record<EventId, string>> = {
  freshGloves: "You ask for fresh gloves.",
  tornGlove: "You report a torn glove.",
  tornBarrier: "You report a torn barrier.",
  newNeedle: "You ask for a new needle.",
  parkNeedle: "You ask to park the needle.",
  moreInk: "You ask for more ink.",
  dropped: "You report something dropped.",
  touched: "You report something touched.",
  photo: "You ask to take a photo.",
  machineSwap: "You ask to swap machines.",
  takeBreak: "You take a break.",
  clientLeaves: "The client leaves for a moment.",
  clientReturns: "The client comes back.",
  clientUnwell: "The client feels unwell.",
  stopEarly: "The client stops early.",
  note: "You leave a note.",
};

/** The step as the protocol says it, on one line. */
const said = (step: Step): string => `"${step.say.en.replace(/\s+/g, " ")}" (${step.id})`;

export function storyOf(protocol: Protocol, moves: readonly Move[], rule: RuleId, told: Told): string[] {
  const before = moves.slice(0, told.at);
  const last = moves[told.at];
  return [...walked(before), ending(protocol, last, rule), `Rule: ${rules[rule].words} Source: ${rules[rule].source}.`];
}

/** Steps done in a row without anything between them are told together. */
function walked(moves: readonly Move[]): string[] {
  const lines: string[] = [];
  let run: Step[] = [];
  const close = (): void => {
    const [first, last] = [run[0], run.at(-1)];
    if (!first || !last) return;
    if (run.length <= 2) lines.push(...run.map((s) => `You do ${said(s)}.`));
    else lines.push(`You do ${run.length} steps as asked, from ${said(first)} to ${said(last)}.`);
    run = [];
  };
  for (const move of moves) {
    if (move.kind === "done") {
      run.push(move.step);
      continue;
    }
    close();
    lines.push(toldAs(move));
  }
  close();
  return lines;
}

function toldAs(move: Exclude<Move, { kind: "done" }>): string {
  switch (move.kind) {
    case "skipped":
      return `You leave out ${said(move.step)}, which the protocol allows.`;
    case "event":
      return reports[move.event];
    case "finish":
      return "You say that the work is finished.";
    case "exposure":
      return "You report an accident, and choose to resume.";
    case "close":
      return "You close the session.";
  }
}

function ending(protocol: Protocol, last: Move | undefined, rule: RuleId): string {
  if (!last) return "";
  if (last.kind === "close") return `You close the session. ${atClose[rule] ?? "Something is not as it should be."}`;
  const ends = rule === "handsAfterGloves" || rule === "damagedOrSoiledGlovesChanged";
  if (last.kind === "done" && ends && last.step.effects.every((e) => !("item" in e))) {
    return `You do ${said(last.step)}, and work goes on.`;
  }
  if (last.kind === "done" || last.kind === "skipped") {
    return `Now it asks: ${said(last.step)}${touches(protocol, last.step)}.`;
  }
  return toldAs(last);
}

const atClose: Partial<Record<RuleId, string>> = {
  handsLast: "Your hands are not washed.",
  sharpsCounted: "The sharps are not all counted in.",
  reusableReady: "A reusable thing is still soiled.",
  criticalSterilised: "A critical thing is still soiled.",
  singleUseDiscarded: "A single-use thing still lies there.",
  noBarrierLeft: "A barrier is still on.",
  wipedAtTheEnd: "A surface was wetted and never wiped.",
};

function touches(protocol: Protocol, step: Step): string {
  const ids = new Set(step.effects.flatMap((e) => ("item" in e ? [e.item] : [])));
  const names = protocol.items.filter((i) => ids.has(i.id)).map((i) => i.calledAs.en);
  return names.length > 0 ? `, which meets: ${names.join(", ")}` : "";
}
