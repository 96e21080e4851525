import { describe, expect, it } from "vitest";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { type Draft, emptyDraft, inputFrom, labelDraftOf } from "./draft";

const label = smallProtocol.products[0]?.label;
const typedLabel = (change: object) => ({
  spray: { ...labelDraftOf(label ?? expect.fail("the small protocol has a spray"), "en"), ...change },
});
const filled = (change: Partial<Draft> = {}): Draft => ({
  ...emptyDraft("small"),
  clientReference: " C-14 ",
  artist: "Artist A",
  station: "Station 1",
  ...change,
});
const read = (draft: Draft, carriedOver: string[] = []) =>
  inputFrom(draft, smallProtocol, "2026-11-25", "Europe/Lisbon", carriedOver);

describe("the prepare form", () => {
  it("comes to a session with the protocol's own labels where nothing was typed", () => {
    const from = read(filled());
    expect(from).toMatchObject({ ok: true, input: { clientReference: "C-14", labels: { spray: label }, lots: [] } });
  });

  it("asks for client, artist and station, each by its field", () => {
    const from = read(emptyDraft("small"));
    expect(from).toEqual({
      ok: false,
      issues: [
        { field: "clientReference", code: "missing" },
        { field: "artist", code: "missing" },
        { field: "station", code: "missing" },
      ],
    });
  });

  it("reads minutes and seconds of the label in use", () => {
    const from = read(
      filled({ labels: typedLabel({ contactMin: "2", contactSec: "30", reapplyMin: "", reapplySec: "" }) }),
    );
    expect(from).toMatchObject({ ok: true, input: { labels: { spray: { contactSec: 150, reapplyWithinSec: null } } } });
  });

  it.each([
    ["nothing", { contactMin: "", contactSec: "" }, "label.spray.contact", "notATime"],
    ["zero", { contactMin: "0", contactSec: "0" }, "label.spray.contact", "notATime"],
    ["words", { contactMin: "five", contactSec: "" }, "label.spray.contact", "notATime"],
    ["more than an hour", { contactMin: "60", contactSec: "1" }, "label.spray.contact", "notATime"],
    ["half a second", { contactMin: "0", contactSec: "0.5" }, "label.spray.contact", "notATime"],
    ["a re-apply time under ten seconds", { reapplyMin: "0", reapplySec: "9" }, "label.spray.reapply", "tooShort"],
    ["a day that is none", { expiry: "2026-02-30" }, "label.spray.expiry", "notADay"],
  ])("does not take %s for a label", (_what, change, field, code) => {
    expect(read(filled({ labels: typedLabel(change) }))).toEqual({ ok: false, issues: [{ field, code }] });
  });

  it("lets an out-of-date pack through with a caution, since the chart refuses it when it is opened", () => {
    const from = read(filled({ lots: { needle: { lot: "N-1", expiry: "2026-11-24" } } }));
    expect(from).toMatchObject({
      ok: true,
      input: { lots: [{ item: "needle", lot: "N-1", expiry: "2026-11-24", known: "typed" }] },
      cautions: [{ field: "lot.needle.expiry", code: "outOfDate" }],
    });
  });

  it("does not caution on the last day of use", () => {
    expect(read(filled({ lots: { needle: { lot: "N-1", expiry: "2026-11-25" } } }))).toMatchObject({ cautions: [] });
  });

  it("wants a lot beside a use-by date", () => {
    const from = read(filled({ lots: { needle: { lot: "", expiry: "2027-01-01" } } }));
    expect(from).toEqual({ ok: false, issues: [{ field: "lot.needle.lot", code: "lotMissing" }] });
  });

  it("carries over only items that this protocol knows", () => {
    expect(read(filled(), ["chair", "somethingElse"])).toMatchObject({ input: { carriedOver: ["chair"] } });
  });
});
