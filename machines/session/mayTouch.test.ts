/** "May I touch the lamp?" The answer is the station's own: a touch that is allowed leaves nothing soiled behind. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { announce } from "../../src/announcements/announce";
import { en } from "../../src/announcements/en";
import { textOf } from "../../src/announcements/utterance";
import { applyEffect, isSoiledOutside } from "../../src/session/station";
import { kindsIn } from "../../src/session/world";
import { anySaid, anyStart } from "../../tests/support/anyEvents";
import { begun, inputFor, type Run, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { decide } from "./decide";
import { listenedFor } from "./listenedFor";
import { mayTouch } from "./mayTouch";
import type { SessionEvent } from "./vocabulary";

const done: SessionEvent = { type: "step.done" };
const times = (n: number): SessionEvent[] => Array.from({ length: n }, () => done);
const ask = (item?: string): SessionEvent => (item === undefined ? { type: "may.touch" } : { type: "may.touch", item });
const start = (): Run => begun(inputFor(smallProtocol));
const atWork = (): Run => told(start(), ...times(7));

/** What is said in answer to one event. */
function answered(run: Run, event: SessionEvent): string[] {
  const { next, facts } = decide(run.state, event);
  const moment = { kept: true, event, way: { by: "touch" }, before: run.state, after: next, facts } as const;
  return announce(en, moment).map(textOf);
}

describe("may I touch", () => {
  it("no, with bare hands that were not washed", () => {
    expect(answered(start(), ask("lamp"))).toEqual(["No. Lamp: hands are not washed. Wash or rub them first."]);
  });

  it("yes, with washed hands and a clean thing", () => {
    expect(answered(told(start(), done), ask("lamp"))).toEqual(["Yes. Lamp: clean, and so are your hands."]);
  });

  it("yes, what is covered, and no, what is not, once the gloves have met the client", () => {
    const soiled = told(atWork(), { type: "procedure.finish" }, done);
    expect(soiled.state.context.world.station.hands).toBe("glovedSoiled");
    expect(answered(soiled, ask("lamp"))).toEqual(["Yes. Lamp: covered. Only the cover is touched."]);
    expect(answered(soiled, ask("bottle"))).toEqual(["No. Bottle: your gloves are soiled. Change them first."]);
  });

  it("no, while a surface must stay wet, whatever the hands are", () => {
    const wet = told(atWork(), { type: "surface.applied", surface: "lamp" });
    expect(answered(wet, ask("lamp"))).toEqual(["No. Lamp: must still stay wet. Wait until I say time."]);
  });

  it("no, with gloves that a flow is about to take off", () => {
    const torn = told(atWork(), { type: "event.reported", event: "freshGloves" });
    expect(mayTouch(torn.state.context, "cup")).toEqual({ may: false, reason: "glovesSoiled" });
    expect(mayTouch(told(torn, ...times(3)).state.context, "cup")).toEqual({ may: true, because: "clean" });
  });

  it("asks which is meant, one by one, and answers for the one that is agreed to", () => {
    const asked = told(atWork(), ask());
    expect(asked.state.matches({ conversation: "naming" })).toBe(true);
    expect(answered(atWork(), ask())).toEqual(["Which one? Lamp?"]);
    expect(listenedFor(asked.state).has("yes")).toBe(true);
    expect(answered(asked, { type: "answer.yes" })).toEqual(["Yes. Lamp: clean, and so are your hands."]);
    expect(answered(asked, { type: "answer.no" })).toEqual(["Chair?"]);
    const none = told(asked, { type: "answer.no" });
    expect(answered(none, { type: "answer.no" })).toEqual(["No. I do not know that item. It must be in the protocol."]);
    expect(told(none, { type: "answer.no" }).state.matches({ conversation: "open" })).toBe(true);
  });

  it("keeps a no as a refusal and a yes as nothing, and reads no step again", () => {
    expect(decide(start().state, ask("lamp")).facts).toMatchObject([
      { type: "v1.Refused", request: "may.touch", reason: "handsNotWashed", item: "lamp" },
    ]);
    expect(decide(told(start(), done).state, ask("lamp")).facts).toEqual([]);
  });

  it("waits while another question stands, and in first aid", () => {
    const skipping = told(told(start(), done), { type: "step.skip" });
    expect(decide(skipping.state, ask("lamp")).facts).toMatchObject([{ reason: "answerFirst" }]);
    const hurt = told(atWork(), { type: "exposure.reported" });
    expect(decide(hurt.state, ask("lamp")).facts).toMatchObject([{ reason: "answerFirst" }]);
  });

  property.prop([anyStart, fc.array(anySaid, { maxLength: 40 }), fc.constantFrom("chair", "lamp", "cup", "bottle")])(
    "a yes is never a touch that soils what was clean, gloves or thing, or that the station finds fault with",
    (from, more, item) => {
      const run = told(start(), ...from, ...more);
      const { input, world } = run.state.context;
      const answer = mayTouch(run.state.context, item);
      if (!answer.may) return;
      const { station, findings } = applyEffect(world.station, { verb: "touch", item }, kindsIn(input));
      const [was, is] = [world.station.items[item], station.items[item]];
      const isWiped = world.clocks[item]?.state === "ready";
      if (!isWiped) expect(findings).toEqual([]);
      if (world.station.hands !== "glovedSoiled" && !isWiped) expect(station.hands).toBe(world.station.hands);
      if (was && is && was.condition !== "soiled") expect(is.condition).toBe(was.condition);
      if (was && is && answer.because === "clean" && !isWiped) expect(isSoiledOutside(is)).toBe(false);
    },
  );
});
