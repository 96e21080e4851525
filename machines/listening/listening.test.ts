import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { decideListening, startListening } from "./decide";
import type { ListeningEvent, ListeningOrder } from "./vocabulary";

/** Runs events from asleep; gives where it ends up and all that was ordered. */
function run(...events: readonly ListeningEvent[]) {
  let state = startListening();
  const orders: ListeningOrder[] = [];
  for (const event of events) {
    const decided = decideListening(state, event);
    state = decided.next;
    orders.push(...decided.orders);
  }
  return { state, orders };
}
const start = { type: "listen.start" } as const;
const stop = { type: "listen.stop" } as const;
const opened = { type: "microphone.opened" } as const;
const pulledOut = { type: "microphone.lost", reason: "ended" } as const;
const denied = { type: "microphone.refused", reason: "denied" } as const;
const busy = { type: "microphone.refused", reason: "busy" } as const;
const pass = (elapsedMs: number) => ({ type: "time.witnessed", elapsedMs }) as const;
const unsure = { type: "phrase.unsure", candidates: ["done", "back"] } as const;

describe("listening", () => {
  test("asks for the microphone when told to listen, and listens once it is open", () => {
    const { state, orders } = run(start, opened);
    expect(state.value).toEqual({ listening: "quiet" });
    expect(orders).toEqual([{ type: "microphone.open" }]);
  });

  test("closes the microphone when told to stop, from wherever it is", () => {
    const endings = [[start], [start, opened], [start, opened, pulledOut], [start, denied]].map((way) =>
      run(...way, stop),
    );
    expect(endings.map(({ state }) => state.value)).toEqual(Array(4).fill("asleep"));
    expect(endings.map(({ orders }) => orders.at(-1)?.type)).toEqual(Array(4).fill("microphone.close"));
  });

  test("notices someone speaking, and that they stopped", () => {
    expect(run(start, opened, { type: "sound.started" }).state.value).toEqual({ listening: "speaking" });
    expect(run(start, opened, { type: "sound.started" }, { type: "sound.ended" }).state.value).toEqual({
      listening: "quiet",
    });
  });

  test("holds a question between two phrases until one is understood", () => {
    const asked = run(start, opened, unsure).state;
    expect([asked.value, asked.context.candidates]).toEqual([{ listening: "unsure" }, ["done", "back"]]);
    const answered = run(start, opened, unsure, { type: "phrase.understood" }).state;
    expect([answered.value, answered.context.candidates]).toEqual([{ listening: "quiet" }, []]);
  });

  test("asks about the newer pair when it is unsure again", () => {
    const { state } = run(start, opened, unsure, { type: "phrase.unsure", candidates: ["yes", "no"] });
    expect(state.context.candidates).toEqual(["yes", "no"]);
  });

  test("drops a question that nobody answers for eight seconds", () => {
    expect(run(start, opened, unsure, pass(7999)).state.value).toEqual({ listening: "unsure" });
    expect(run(start, opened, unsure, pass(4000), pass(4000)).state.value).toEqual({ listening: "quiet" });
  });

  test("says at once and once that the microphone is gone, and closes what is left of it", () => {
    const { state, orders } = run(start, opened, pulledOut, pass(100), pass(100));
    expect(state.value).toEqual({ lost: "waiting" });
    expect(orders.slice(1)).toEqual([{ type: "ear.lost", reason: "ended" }, { type: "microphone.close" }]);
  });

  test("tries again after one second, then two, four, and every eight", () => {
    const attempts = (...events: readonly ListeningEvent[]) =>
      run(start, opened, pulledOut, ...events).orders.filter((order) => order.type === "microphone.open").length - 1;
    expect(attempts(pass(999))).toBe(0);
    expect(attempts(pass(1000))).toBe(1);
    expect(attempts(pass(1000), busy, pass(1999))).toBe(1);
    expect(attempts(pass(1000), busy, pass(2000), busy, pass(4000), busy, pass(8000), busy, pass(8000))).toBe(5);
  });

  test("says that it is back, and for how long it was not", () => {
    const { state, orders } = run(start, opened, pulledOut, pass(1000), pass(300), opened);
    expect(state.value).toEqual({ listening: "quiet" });
    expect(orders.at(-1)).toEqual({ type: "ear.back", lostForMs: 1300 });
    expect(state.context.lostBecause).toBeNull();
  });

  test("gives up on an attempt that does not answer, and tries again later", () => {
    const { state, orders } = run(start, opened, pulledOut, pass(1000), pass(10_000), pass(2000));
    expect(state.value).toEqual({ lost: "reopening" });
    expect(orders.slice(-2).map((order) => order.type)).toEqual(["microphone.close", "microphone.open"]);
  });

  test("does not ask again when permission was denied, until a person does", () => {
    const waiting = run(start, denied, pass(60_000));
    expect(waiting.state.value).toEqual({ lost: "forAPerson" });
    expect(waiting.orders).toEqual([{ type: "microphone.open" }, { type: "ear.lost", reason: "denied" }]);
    expect(run(start, denied, pass(60_000), start).orders.at(-1)).toEqual({ type: "microphone.open" });
  });

  test("does not open the microphone again and again for a recogniser that has no model", () => {
    const { state, orders } = run(start, { type: "microphone.lost", reason: "recogniser" }, pass(60_000));
    expect(state.value).toEqual({ lost: "forAPerson" });
    expect(orders.filter((order) => order.type === "microphone.open").length).toBe(1);
  });

  const anyEvent: fc.Arbitrary<ListeningEvent> = fc.oneof(
    fc.constantFrom<ListeningEvent>(start, stop, opened, pulledOut, denied, busy, unsure),
    fc.constantFrom<ListeningEvent>({ type: "sound.started" }, { type: "sound.ended" }, { type: "phrase.understood" }),
    fc.integer({ min: 0, max: 12_000 }).map(pass),
  );

  property.prop([fc.array(anyEvent, { maxLength: 60 })])("says lost and back in turn, whatever happens", (events) => {
    const said = run(...events)
      .orders.map((order) => order.type)
      .filter((type) => type.startsWith("ear."));
    const inTurn = said.filter((type, n) => n > 0 && type === said[n - 1] && type === "ear.back");
    expect(inTurn).toEqual([]);
    expect(said[0] ?? "ear.lost").toBe("ear.lost");
  });

  property.prop([fc.array(anyEvent, { maxLength: 60 })])(
    "knows why nothing is heard exactly while it is lost",
    (events) => {
      const { state } = run(...events);
      expect(state.context.lostBecause !== null).toBe(state.matches("lost"));
    },
  );

  property.prop([fc.array(anyEvent, { maxLength: 40 })])("always listens again once it can", (events) => {
    const { state } = run(...events, stop, start, opened);
    expect(state.value).toEqual({ listening: "quiet" });
  });
});
