import { expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { recordOf } from "../export/recordFile";
import { live } from "../export/samples/lived";
import { wholeSession } from "../export/samples/wholeSession";
import { summarise } from "../export/summarise";
import { newSigner } from "../log";
import { paperWords } from "../screen/papers/words";
import { emptyReport, lockReport, openReport, reportsFrom } from "./report";

const input = inputFor(smallProtocol, { lots: [{ item: "needle", lot: "N-204", expiry: null, known: "typed" }] });
const { kept } = await live(input, [...wholeSession.slice(0, 9), { type: "exposure.reported" }], await newSigner());
const { phases } = paperWords("es");
const [report] = reportsFrom(recordOf(kept), phases);

test("is filled in from the facts: when, where, who, with which device of which lot", () => {
  expect(report).toMatchObject({ place: "Station 1", artist: "Artist A", device: "needle", lot: "N-204" });
  expect(report?.phase).toBe("Procedimiento");
  expect(report?.at).toMatch(/^2026-11-25T09:00$/);
});

test("leaves what only the artist knows to the artist", () => {
  expect([report?.how, report?.bodyPart, report?.source]).toEqual(["", "", ""]);
});

test("the session's record states the interruption and nothing of the report", () => {
  expect(summarise(input, kept.entries).exposures).toEqual([{ n: expect.any(Number), outcome: "open" }]);
});

test("a session without an accident gives no report", async () => {
  const quiet = await live(input, wholeSession, await newSigner());
  expect(reportsFrom(recordOf(quiet.kept), phases)).toEqual([]);
});

test("is unreadable without its own passphrase, and whole with it", async () => {
  const written = { ...emptyReport("Europe/Lisbon"), how: "Cartridge slipped while it was changed." };
  const locked = await lockReport(written, "nine green bottles", 1000);
  if (!locked.ok) throw new Error(locked.message);
  expect(locked.text).not.toContain("slipped");
  expect(await openReport(locked.text, "nine green bottles")).toEqual({ ok: true, report: written });
  expect(await openReport(locked.text, "another passphrase")).toMatchObject({ code: "wrong-passphrase" });
});

test.each(["", "{", "[]", "null", '{"format":"gloveside-locked"}'])(
  "refuses %j, which is no locked report",
  async (text) => {
    expect(await openReport(text, "nine green bottles")).toMatchObject({ ok: false, code: "not-a-lock" });
  },
);
