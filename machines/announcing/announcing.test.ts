import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { en } from "../../src/announcements/en";
import { sayClock, sayTimeUp } from "../../src/announcements/sayClock";
import { sayDeviation, sayEarBack, sayEarTrouble, sayKept, sayNotKept } from "../../src/announcements/sayNotice";
import { askSkipReason } from "../../src/announcements/sayQuestion";
import { sayPhase } from "../../src/announcements/sayStep";
import { textOf, type Utterance } from "../../src/announcements/utterance";
import { decideAnnouncing, startAnnouncing } from "./decide";
import { type AnnouncingEvent, type AnnouncingOrder, gatherMs, holdMs, hushMs, longestMs, pauseMs } from "./vocabulary";

const chair = { id: "chair", calledAs: { en: "chair" } };
const lamp = { id: "lamp", calledAs: { en: "lamp" } };
const stepOf = (text: string): Utterance => ({
  key: "step",
  parts: [{ kind: "protocol", text }],
  urgency: "soon",
  solicited: true,
});

const say = (...utterances: Utterance[]): AnnouncingEvent => ({ type: "announce", utterances });
const pass = (elapsedMs: number): AnnouncingEvent => ({ type: "time.witnessed", elapsedMs });
const ended = (turn: number): AnnouncingEvent => ({ type: "voice.ended", turn });

const ordersAfter = (events: readonly AnnouncingEvent[]): AnnouncingOrder[] => {
  const orders: AnnouncingOrder[] = [];
  let state = startAnnouncing("en");
  for (const event of events) {
    const decision = decideAnnouncing(state, event);
    orders.push(...decision.orders);
    state = decision.next;
  }
  return orders;
};

const shown = (order: AnnouncingOrder): string =>
  order.type === "voice.speak" ? `${order.turn}: ${textOf(order.utterance)}` : `${order.turn}: stop`;
const heard = (...events: AnnouncingEvent[]): string[] => ordersAfter(events).map(shown);

describe("announcing", () => {
  it("says one thing at a time, in order", () => {
    expect(heard(say(sayKept(en, "lot"), stepOf("Wash your hands.")))).toEqual(["1: Lot kept."]);
    expect(heard(say(sayKept(en, "lot"), stepOf("Wash your hands.")), ended(1))).toEqual([
      "1: Lot kept.",
      "2: Wash your hands.",
    ]);
  });

  it("interrupts for a warning, and says again what was cut off", () => {
    expect(heard(say(stepOf("Wash your hands.")), say(sayNotKept(en, "storageFull")), ended(1), ended(2))).toEqual([
      "1: Wash your hands.",
      "1: stop",
      "2: Not kept. The storage is full. Make room, then repeat it.",
      "3: Wash your hands.",
    ]);
  });

  it("does not let one warning cut off another", () => {
    const events = [say(sayNotKept(en, "writeFailed")), say(sayEarTrouble(en, "lost"))];
    expect(heard(...events)).toHaveLength(1);
    expect(heard(...events, ended(1))[1]).toBe("2: I cannot hear you. Use the pedal or the screen.");
  });

  const hush: AnnouncingEvent = { type: "announcement.hush" };

  it("stops what it says when silence is asked for, and what can be asked for again is dropped", () => {
    const events = [say(stepOf("Wash your hands."), sayKept(en, "lot")), hush, pass(hushMs)];
    expect(heard(...events)).toEqual(["1: Wash your hands.", "1: stop"]);
  });

  it("says a warning again from its beginning after the silence that was asked for, and not before", () => {
    const events = [say(sayEarTrouble(en, "lost")), hush, pass(hushMs - 1)];
    expect(heard(...events)).toEqual(["1: I cannot hear you. Use the pedal or the screen.", "1: stop"]);
    expect(heard(...events, pass(1))[2]).toBe("2: I cannot hear you. Use the pedal or the screen.");
  });

  it("answers during that silence, and warns of what is new", () => {
    const events = [say(sayEarTrouble(en, "lost")), hush, say(sayKept(en, "lot")), say(sayNotKept(en, "writeFailed"))];
    expect(heard(...events).slice(2)).toEqual([
      "2: Lot kept.",
      "2: stop",
      "3: Not kept. Writing failed. Repeat it, or write it on paper.",
    ]);
  });

  it("holds what is not urgent for a pause in the talk", () => {
    const talk: AnnouncingEvent[] = [{ type: "talk.started" }, say(sayTimeUp(en, [chair])), pass(gatherMs)];
    expect(heard(...talk)).toEqual([]);
    expect(heard(...talk, { type: "talk.ended" }, pass(pauseMs - 1))).toEqual([]);
    expect(heard(...talk, { type: "talk.ended" }, pass(pauseMs))).toEqual(["1: Chair: time. Stayed wet?"]);
  });

  it("does not hold it longer than ten seconds", () => {
    const talk: AnnouncingEvent[] = [{ type: "talk.started" }, say(sayTimeUp(en, [chair])), pass(holdMs - 1)];
    expect(heard(...talk)).toEqual([]);
    expect(heard(...talk, pass(1))).toEqual(["1: Chair: time. Stayed wet?"]);
  });

  it("speaks through the talk when it must", () => {
    expect(heard({ type: "talk.started" }, say(sayDeviation(en, "usedUnsterile", null)))).toHaveLength(1);
  });

  it("says together what falls together", () => {
    expect(heard(say(sayTimeUp(en, [chair])), pass(gatherMs - 1), say(sayTimeUp(en, [lamp])), pass(1))).toEqual([
      "1: Chair and lamp: time. Stayed wet?",
    ]);
  });

  it("lets the newest word on a surface stand", () => {
    expect(
      heard(say(sayTimeUp(en, [chair])), say(sayClock(en, "dried", [chair])), pass(holdMs), ended(1), pass(holdMs)),
    ).toEqual(["1: Chair: wet it once more, the time starts over."]);
  });

  it("stops reading a step when the next one is asked for", () => {
    expect(heard(say(stepOf("Wash your hands.")), say(stepOf("Dry them.")))).toEqual([
      "1: Wash your hands.",
      "1: stop",
      "2: Dry them.",
    ]);
  });

  it("stops reading a step when the phase moves on", () => {
    expect(heard(say(stepOf("Wash your hands.")), say(sayPhase(en, "procedure"))).at(-1)).toBe(
      "2: Procedure. Tell me what happens.",
    );
  });

  it("keeps all of one moment, even two of one kind", () => {
    const twoEchoes = say(sayKept(en, "undone"), sayKept(en, "paused"));
    expect(heard(twoEchoes, ended(1))).toEqual(["1: Undone.", "2: Paused."]);
  });

  it("says the last again when asked, and nothing when there was none", () => {
    const again: AnnouncingEvent = { type: "announcement.repeat" };
    expect(heard(again)).toEqual([]);
    expect(heard(say(sayKept(en, "lot")), ended(1), again)).toEqual(["1: Lot kept.", "2: Lot kept."]);
  });

  it("does not say what was withdrawn, and cuts it off while it sounds", () => {
    const question = askSkipReason(en);
    const withdraw: AnnouncingEvent = { type: "announcement.withdraw", key: question.key };
    expect(heard(say(stepOf("Wash."), question), withdraw, ended(1))).toEqual(["1: Wash."]);
    expect(heard(say(question), withdraw).at(-1)).toBe("1: stop");
  });

  it("goes on when the voice fails or never ends, and takes no notice of a late end", () => {
    const two = say(sayKept(en, "lot"), sayEarBack(en));
    expect(heard(two, { type: "voice.failed", turn: 1 })).toHaveLength(2);
    expect(heard(two, pass(longestMs))).toEqual(["1: Lot kept.", "1: stop", "2: I hear you again."]);
    expect(heard(two, ended(1), ended(1), say(stepOf("Wash.")))).toHaveLength(2);
  });
});

const anyUtterance = fc.oneof(
  fc.constantFrom("Wash.", "Dry.").map(stepOf),
  fc.constantFrom(chair, lamp).map((item) => sayTimeUp(en, [item])),
  fc.constantFrom(sayNotKept(en, "writeFailed"), sayKept(en, "lot"), askSkipReason(en)),
);
const anyEvent: fc.Arbitrary<AnnouncingEvent> = fc.oneof(
  fc.array(anyUtterance, { minLength: 1, maxLength: 3 }).map((utterances) => say(...utterances)),
  fc.integer({ min: -500, max: 12_000 }).map(pass),
  fc.integer({ min: 0, max: 30 }).map(ended),
  fc.constantFrom<AnnouncingEvent>(
    { type: "talk.started" },
    { type: "talk.ended" },
    { type: "announcement.repeat" },
    { type: "announcement.hush" },
    { type: "announcement.withdraw", key: "question" },
  ),
);

describe("announcing, whatever happens", () => {
  property.prop([fc.array(anyEvent, { maxLength: 60 })])("never lets two sound at once", (events) => {
    let sounding: number | null = null;
    let state = startAnnouncing("en");
    for (const event of events) {
      if (event.type === "voice.ended" && event.turn === sounding) sounding = null;
      const { next, orders } = decideAnnouncing(state, event);
      state = next;
      for (const order of orders) {
        if (order.type === "voice.stop") {
          expect(order.turn).toBe(sounding);
          sounding = null;
        } else {
          expect(sounding).toBeNull();
          sounding = order.turn;
        }
      }
    }
  });

  property.prop([fc.array(anyEvent, { maxLength: 40 })])(
    "leaves nothing waiting once all has had its time",
    (events) => {
      let state = startAnnouncing("en");
      for (const event of events) state = decideAnnouncing(state, event).next;
      for (let turn = 0; turn < 200 && state.context.waiting.length > 0; turn++) {
        state = decideAnnouncing(state, pass(holdMs)).next;
        state = decideAnnouncing(state, ended(state.context.turn)).next;
      }
      expect(state.context.waiting).toEqual([]);
    },
  );

  property.prop([fc.array(anyEvent, { maxLength: 40 })])(
    "says every warning that was being said or waiting again, when silence was asked for",
    (events) => {
      let state = startAnnouncing("en");
      for (const event of events) state = decideAnnouncing(state, event).next;
      const { speaking, waiting } = state.context;
      const told = [...(speaking && !speaking.obsolete ? [speaking] : []), ...waiting].map(
        ({ utterance }) => utterance,
      );
      const warnings = told.filter(({ urgency, solicited }) => urgency === "now" || !solicited);
      state = decideAnnouncing(state, { type: "announcement.hush" }).next;
      const said: string[] = [];
      const take = (event: AnnouncingEvent): void => {
        const { next, orders } = decideAnnouncing(state, event);
        state = next;
        said.push(...orders.flatMap((order) => (order.type === "voice.speak" ? [textOf(order.utterance)] : [])));
      };
      for (let turn = 0; turn < 200 && state.context.waiting.length > 0; turn++) {
        take(pass(holdMs));
        take(ended(state.context.turn));
      }
      const all = said.join(" ").toLowerCase();
      const lost = warnings.filter(({ parts }) =>
        parts.some((part) => part.kind === "item" && !all.includes(part.text)),
      );
      expect(lost).toEqual([]);
      expect(warnings.length === 0 || said.length > 0).toBe(true);
    },
  );
});
