/** Undo: exactly what was before, for every way of editing. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { smallProtocol } from "../../tests/support/smallProtocol";
import type { Protocol } from "../session/protocol";
import type { Edit } from "./edit";
import { anyEdit } from "./examples";
import { edited, type History, historyOf, redoable, redone, runEnded, saved, undoable, undone } from "./history";

const show = (en: string): Edit => ({ do: "changeStep", step: "washHands", part: { show: { en } } });
const typed = (...texts: string[]): History =>
  texts.reduce((now, en) => edited(now, show(en)).history, historyOf(smallProtocol));

describe("undo", () => {
  it("takes back a run of typing in one field as one act", () => {
    const now = typed("W", "Wa", "Wash");
    expect(undoable(now)).toBe("changeStep");
    expect(undone(now).present).toEqual(smallProtocol);
    expect(undoable(undone(now))).toBeNull();
  });

  it("takes back only what was typed since the field was left", () => {
    const now = edited(runEnded(typed("Wa")), show("Wash")).history;
    expect(undone(now).present.setUp[0]?.show.en).toBe("Wa");
  });

  it("does not melt two fields into one act", () => {
    const now = edited(typed("Wash"), { do: "changeStep", step: "washHands", part: { handsOnSec: 60 } }).history;
    expect(undone(now).present.setUp[0]).toMatchObject({ show: { en: "Wash" }, handsOnSec: 15 });
  });

  it("keeps what cannot be made out of the story", () => {
    const before = typed("Wash");
    const found = edited(before, show(""));
    expect(found.trouble).toMatchObject({ at: "$.setUp[0].show.en", code: "empty" });
    expect(found.history).toBe(before);
  });

  it("goes back behind a save, and forward again to its version", () => {
    const now = saved(typed("Wash"), { ...smallProtocol, version: "1.0.1" });
    expect(undoable(now)).toBe("save");
    expect(undone(now).present.version).toBe("1.0.0");
    expect(redoable(undone(now))).toBe("save");
    expect(redone(undone(now)).present.version).toBe("1.0.1");
  });

  it("forgets what was taken back once something else is done", () => {
    expect(redoable(edited(undone(typed("Wash")), show("Rub")).history)).toBeNull();
  });

  property.prop([fc.array(anyEdit, { minLength: 1, maxLength: 25 })], { numRuns: 100 })(
    "returns exactly the previous draft, all the way back, and redo all the way forward",
    (edits) => {
      let history = historyOf(smallProtocol);
      const story: Protocol[] = [smallProtocol];
      for (const make of edits) {
        const next = edited(runEnded(history), make(history.present));
        history = next.history;
        if (next.trouble === null) story.push(history.present);
      }
      for (const before of story.slice(0, -1).reverse()) {
        history = undone(history);
        expect(history.present).toEqual(before);
      }
      expect(undoable(history)).toBeNull();
      for (const after of story.slice(1)) {
        history = redone(history);
        expect(history.present).toEqual(after);
      }
      expect(redoable(history)).toBeNull();
    },
  );
});
