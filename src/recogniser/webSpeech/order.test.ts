/** The order guarantees of the Web Speech API draft, "SpeechRecognition Events", over every order an engine could report. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect } from "vitest";
import { EventOrder, type StreamEvent } from "./order";

const anyEvents = fc.array(
  fc.constantFrom<StreamEvent | "result">(
    "audiostart",
    "soundstart",
    "speechstart",
    "speechend",
    "soundend",
    "audioend",
    "result",
  ),
  { maxLength: 40 },
);
function fire(events: readonly (StreamEvent | "result")[]): readonly string[] {
  const order = new EventOrder();
  const fired = events.flatMap((event) => (event === "result" ? [...order.needAudio(), event] : [...order.of(event)]));
  return [...fired, ...order.closeAll(), "end"];
}
const earlier = (fired: readonly string[], at: number) => fired.slice(0, at);
const count = (fired: readonly string[], type: string) => fired.filter((one) => one === type).length;

describe("the order of events", () => {
  property.prop([anyEvents])("audio has started before anything in it", (events) => {
    const fired = fire(events);
    const inside = ["soundstart", "speechstart", "audioend", "result"];
    const early = fired.filter((type, at) => inside.includes(type) && !earlier(fired, at).includes("audiostart"));
    expect(early).toEqual([]);
  });

  property.prop([anyEvents])("what ends has started, and as often", (events) => {
    const fired = fire(events);
    const unmatched = fired.filter((type, at) => {
      if (!type.endsWith("end") || type === "end") return false;
      const start = type.replace("end", "start");
      return count(earlier(fired, at), start) !== count(earlier(fired, at), type) + 1;
    });
    expect(unmatched).toEqual([]);
    expect(["audio", "sound", "speech"].map((w) => count(fired, `${w}start`) - count(fired, `${w}end`))).toEqual([
      0, 0, 0,
    ]);
  });
});
