import { describe, expect, it } from "vitest";
import type { SessionEvent } from "../../../machines/session/vocabulary";
import { begun, inputFor, type Run, told } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { en } from "../../announcements/en";
import type { Moment } from "../../session/keeper";
import { noticeAfter, withFile } from "./notice";

const way = { by: "touch" } as const;
const start = () => begun(inputFor(smallProtocol));
function momentOf(run: Run, event: SessionEvent): Moment {
  const after = told({ state: run.state, facts: [] }, event);
  return { kept: true, event, way, before: run.state, after: after.state, facts: after.facts };
}
const refused = { kind: "refused", text: "Something" } as const;

describe("the notice on the station screen", () => {
  it("says why a request was refused", () => {
    expect(noticeAfter(en, momentOf(start(), { type: "session.close" }), null)).toEqual({
      kind: "refused",
      text: en.refused.notNow.plain,
    });
  });

  it("says what a report cost, by the item's name", () => {
    const event = { type: "event.reported", event: "touched", item: "lamp" } as const;
    expect(noticeAfter(en, momentOf(start(), event), null)).toEqual({
      kind: "deviation",
      text: "Lamp: touched. It counts as soiled.",
    });
  });

  it("goes away with the next report", () => {
    expect(noticeAfter(en, momentOf(start(), { type: "step.done" }), refused)).toBeNull();
  });

  it("stays while only time goes by", () => {
    const tick = { type: "time.witnessed", elapsedMs: 1000 } as const;
    expect(noticeAfter(en, momentOf(start(), tick), refused)).toEqual(refused);
  });

  it("says that nothing was kept when the storage is full", () => {
    const trouble = { code: "storage-full", message: "" };
    const moment: Moment = { kept: false, event: { type: "step.done" }, way, trouble };
    expect(noticeAfter(en, moment, null)).toEqual({ kind: "notKept", text: en.notKept.storageFull });
  });

  it("says what came of the file until a report is kept, and nothing where no file was offered", () => {
    const trouble = { code: "storage-full", message: "" };
    const again: Moment = { kept: false, event: { type: "step.done" }, way, trouble };
    const saved = withFile({ kind: "notKept", text: "Not kept." }, "signedOnly");
    expect(saved).toEqual({ kind: "notKept", text: "Not kept.", file: "signedOnly" });
    expect(noticeAfter(en, again, saved)?.file).toBe("signedOnly");
    expect(noticeAfter(en, momentOf(start(), { type: "step.done" }), saved)).toBeNull();
    expect(withFile(refused, "none")).toEqual(refused);
    expect(withFile(null, "none")).toBeNull();
  });
});
