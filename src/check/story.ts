/** A breach told step by step, in the plain words of the trade, with the rule and its source, in the language asked for. */
import type { Protocol, Step, Text } from "../session/protocol";
import type { Breach } from "./checkProtocol";
import type { Move } from "./graph";
import type { RuleId } from "./rules";
import { sharpsName } from "./slice";
import type { Why } from "./why";
import type { CheckWords } from "./words";

type Told = Pick<Breach, "rule" | "moves">;

/** @returns plain sentences in order; the last says the rule and its source */
export function storyOf(w: CheckWords, protocol: Protocol, { rule, moves }: Told): string[] {
  const { words, source } = w.rules[rule];
  return [...walked(w, moves.slice(0, -1)), ending(w, protocol, moves.at(-1), rule), w.rule(words, source)];
}

/** Why nothing is proved, in one sentence. */
export function whyOf(w: CheckWords, protocol: Protocol, why: Why): string {
  const nameOf = (id: string): string => {
    const item = protocol.items.find((i) => i.id === id);
    return id === sharpsName ? w.sharps : item ? inWords(w, item.calledAs) : id;
  };
  const told = {
    rule: (id: RuleId) => w.rules[id].words,
    things: (ids: readonly string[]) => (ids.length === 0 ? w.hands : ids.map(nameOf).join(", ")),
  };
  const say = w.why[why.code] as (why: Why, of: typeof told) => string;
  return say(why, told);
}

const inWords = (w: CheckWords, text: Text): string => text[w.language] ?? text.en;

/** The step as the protocol says it, on one line. */
const said = (w: CheckWords, step: Step): string => w.step(inWords(w, step.say).replace(/\s+/g, " "), step.id);

/** Steps done in a row without anything between them are told together. */
function walked(w: CheckWords, moves: readonly Move[]): string[] {
  const lines: string[] = [];
  let run: Step[] = [];
  const close = (): void => {
    const [first, last] = [run[0], run.at(-1)];
    if (!first || !last) return;
    if (run.length <= 2) lines.push(...run.map((s) => w.does(said(w, s))));
    else lines.push(w.doesMany(run.length, said(w, first), said(w, last)));
    run = [];
  };
  for (const move of moves) {
    if (move.kind === "done") {
      run.push(move.step);
      continue;
    }
    close();
    lines.push(toldAs(w, move));
  }
  close();
  return lines;
}

function toldAs(w: CheckWords, move: Exclude<Move, { kind: "done" }>): string {
  switch (move.kind) {
    case "skipped":
      return w.leavesOut(said(w, move.step));
    case "event":
      return w.reports[move.event];
    case "finish":
      return w.finishes;
    case "exposure":
      return w.hurt;
    case "close":
      return w.closes;
  }
}

/** Broken by nothing that the last step does, but by what follows it. */
const atFlowsEnd: ReadonlySet<RuleId> = new Set(["stopMeansStop", "woundCovered", "bloodiedOut"]);

function ending(w: CheckWords, protocol: Protocol, last: Move | undefined, rule: RuleId): string {
  if (!last) return "";
  if (last.kind === "close") {
    const atClose: Partial<Record<RuleId, string>> = w.atClose;
    return `${w.closes} ${atClose[rule] ?? w.notAsItShouldBe}`;
  }
  const ends = rule === "handsAfterGloves" || rule === "damagedOrSoiledGlovesChanged";
  if (last.kind === "done" && atFlowsEnd.has(rule)) return w.goesOn(said(w, last.step));
  if (last.kind === "done" && ends && last.step.effects.every((e) => !("item" in e))) {
    return w.goesOn(said(w, last.step));
  }
  if (last.kind === "done" || last.kind === "skipped") {
    const things = touched(w, protocol, last.step);
    return things === "" ? w.asks(said(w, last.step)) : w.asksAbout(said(w, last.step), things);
  }
  return toldAs(w, last);
}

function touched(w: CheckWords, protocol: Protocol, step: Step): string {
  const ids = new Set(step.effects.flatMap((e) => ("item" in e ? [e.item] : [])));
  return protocol.items
    .filter((i) => ids.has(i.id))
    .map((i) => inWords(w, i.calledAs))
    .join(", ");
}
