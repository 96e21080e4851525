/** Codes held up to the camera: what is kept of them, what is asked, what is refused. */
import { expect, test } from "vitest";
import { announce } from "../../src/announcements/announce";
import { bookFor } from "../../src/announcements/phrasebooks";
import { textOf } from "../../src/announcements/utterance";
import { begun, inputFor, type Run, told, types } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { decide, resume } from "./decide";
import { listenedFor } from "./listenedFor";
import { lotsHere } from "./lookUp";
import type { SessionEvent } from "./vocabulary";

const done: SessionEvent = { type: "step.done" };
const shown: SessionEvent = { type: "lot.shown", lot: "N-204", expiry: "2028-01-31" };
const input = inputFor(smallProtocol);

/** Gloved, in front of the step that opens the needle. */
const atTheNeedle = (): Run => {
  let run = begun(input);
  while (!lotsHere(run.state.context).includes("needle")) run = told(run, done);
  return { ...run, facts: [] };
};

const spokenFor = ({ state }: Run, event: SessionEvent): string => {
  const { next, facts } = decide(state, event);
  const moment = { kept: true, event, way: { by: "scan" }, before: state, after: next, facts } as const;
  return announce(bookFor("en"), moment)
    .map((utterance) => textOf(utterance))
    .join(" ");
};

test("a code is read back letter by letter, and its lot counts only once it is confirmed", () => {
  const read = told(atTheNeedle(), shown);
  expect(types(read.facts)).toEqual(["LotShown"]);
  expect(read.state.context.world.lots).toEqual({});
  expect(spokenFor(atTheNeedle(), shown)).toBe(
    "Needle: lot november dash two zero four. Good until thirty-one January twenty twenty-eight. To confirm: I vouch for that.",
  );
  const confirmed = told(read, { type: "answer.confirm" });
  expect(confirmed.state.context.world.lots).toEqual({ needle: { lot: "N-204", expiry: "2028-01-31" } });
  expect(types(confirmed.facts)).toEqual(["LotShown", "LotGiven", "StepEntered"]);
});

test("a yes to anything else does not confirm a lot; a no takes it back and asks the step again", () => {
  const read = told(atTheNeedle(), shown);
  expect(types(told(read, { type: "answer.yes" }).facts)).toEqual(["LotShown", "Refused"]);
  const refused = told(read, { type: "answer.no" });
  expect(refused.state.context.world.lots).toEqual({});
  expect(refused.state.matches({ conversation: "open" })).toBe(true);
});

test("while it is read back only the confirmation and a no are listened for, and the accident", () => {
  const { state } = told(atTheNeedle(), shown);
  expect([...listenedFor(state)].sort()).toEqual([
    "accident",
    "again",
    "confirm",
    "hush",
    "louder",
    "no",
    "options",
    "quieter",
  ]);
});

test("asked to scan, it says to hold the code up where a pack is taken up, and states nothing", () => {
  const scan: SessionEvent = { type: "code.wanted" };
  const { state } = atTheNeedle();
  expect(listenedFor(state)).toContain("scan");
  expect(spokenFor(atTheNeedle(), scan)).toBe("Hold the code up to the camera.");
  expect(told(atTheNeedle(), scan).facts).toEqual([]);
  expect(told(told(atTheNeedle(), shown), scan).state.matches({ conversation: { readBack: "lot" } })).toBe(true);
});

test("asked to scan where no pack is taken up, it refuses aloud and keeps that", () => {
  const scan: SessionEvent = { type: "code.wanted" };
  const run = told(begun(input), scan);
  expect(listenedFor(run.state)).not.toContain("scan");
  expect(run.facts.at(-1)).toMatchObject({ type: "v1.Refused", request: "code.wanted", reason: "notNow" });
  expect(spokenFor(begun(input), scan)).toContain("Not at this point.");
});

test("a pack past its day is refused aloud, and both the code and the refusal are kept", () => {
  const past: SessionEvent = { type: "lot.shown", lot: "N-101", expiry: "2026-11-24" };
  const run = told(atTheNeedle(), past);
  expect(run.facts).toMatchObject([
    { type: "v1.LotShown", item: "needle", lot: "N-101" },
    { type: "v1.Refused", reason: "outOfDate", item: "needle" },
  ]);
  expect(run.state.context.world.lots).toEqual({});
  expect(run.state.matches({ conversation: "open" })).toBe(true);
  expect(spokenFor(atTheNeedle(), past)).toBe("Needle: out of date. Use one in date.");
});

test("a pack on its last day is taken: it is good through the end of that day", () => {
  const last: SessionEvent = { type: "lot.shown", lot: "N-102", expiry: "2026-11-25" };
  expect(types(told(atTheNeedle(), last).facts)).toEqual(["LotShown"]);
});

test.each([
  ["codeUnreadable", "I cannot read that code"],
  ["codeWithoutLot", "that code names no lot"],
  ["codeUnsure", "that code may be printed wrongly"],
] as const)("a code that is %s is refused aloud, and the refusal is kept", (why, words) => {
  const event: SessionEvent = { type: "code.refused", why };
  expect(told(atTheNeedle(), event).facts).toMatchObject([{ type: "v1.Refused", reason: why, item: "needle" }]);
  expect(spokenFor(atTheNeedle(), event).toLowerCase()).toContain(words.toLowerCase());
});

test("one scan of a box stands for many: a needle opened later draws from it without another code", () => {
  let run = told(atTheNeedle(), shown, { type: "answer.confirm" });
  while (run.state.context.world.phase !== "procedure") run = told(run, done);
  run = told({ ...run, facts: [] }, { type: "event.reported", event: "newNeedle" });
  while (run.state.context.world.flows.length > 0) run = told(run, done);
  expect(run.state.context.world.sharps.opened).toBe(2);
  expect(run.state.context.world.lots).toEqual({ needle: { lot: "N-204", expiry: "2028-01-31" } });
  expect(types(run.facts)).not.toContain("LotGiven");
});

test("the box in use held up again says and states nothing; another box takes its place once confirmed", () => {
  const kept = told(atTheNeedle(), shown, { type: "answer.confirm" });
  expect(told({ ...kept, facts: [] }, shown).facts).toEqual([]);
  const other = told(kept, { type: "lot.shown", lot: "N-300", expiry: null }, { type: "answer.confirm" });
  expect(other.state.context.world.lots).toEqual({ needle: { lot: "N-300", expiry: null } });
});

test("a code held up where no pack is taken states nothing", () => {
  expect(told({ ...begun(input), facts: [] }, shown).facts).toEqual([]);
});

test("killed before the confirmation, the session knows no lot; the code is held up again", () => {
  const facts = [...begun(input).facts];
  const run = told({ state: begun(input).state, facts }, ...Array.from({ length: 5 }, () => done), shown);
  const again = resume(input, run.facts);
  expect(again.context.world.lots).toEqual({});
  expect(types(told({ state: again, facts: [] }, shown, { type: "answer.confirm" }).facts)).toContain("LotGiven");
});
