/** What must stay readable after a report: that it was refused and why, what it cost, or that nothing was kept. Pure. */
import type { Phrasebook } from "../../announcements/phrasebook";
import { sayDeviation, sayNotKept, sayRefused } from "../../announcements/sayNotice";
import { textOf } from "../../announcements/utterance";
import type { Moment } from "../../session/keeper";
import { kindsIn } from "../../session/world";
import type { Notice, SavedFile } from "../model";

/** Time and the app's own business neither raise a notice nor take one down. */
const ownBusiness: ReadonlySet<string> = new Set([
  "time.witnessed",
  "time.gap",
  "question.asked",
  "ear.lost",
  "ear.back",
]);

/** @param shown what stands there now. */
export function noticeAfter(book: Phrasebook, moment: Moment, shown: Notice | null): Notice | null {
  if (!moment.kept) {
    const reason = moment.trouble.code === "storage-full" ? "storageFull" : "writeFailed";
    const notKept: Notice = { kind: "notKept", text: textOf(sayNotKept(book, reason)) };
    return shown?.file ? { ...notKept, file: shown.file } : notKept;
  }
  const { facts, after, event } = moment;
  const nameOf = (id: string | null) => (id === null ? null : (kindsIn(after.context.input)[id] ?? null));
  const refused = facts.find((f) => f.type === "v1.Refused");
  if (refused) return { kind: "refused", text: textOf(sayRefused(book, refused.reason, nameOf(refused.item))) };
  const deviations = facts.filter((f) => f.type === "v1.Deviation");
  if (deviations.length > 0) {
    const sentences = deviations.map((d) => textOf(sayDeviation(book, d.code, nameOf(d.item))));
    return { kind: "deviation", text: [...new Set(sentences)].join(" ") };
  }
  return ownBusiness.has(event.type) ? shown : null;
}

/** Nothing is offered as a file where no notice says that something was not kept. */
export function withFile(shown: Notice | null, file: SavedFile): Notice | null {
  return shown?.kind === "notKept" ? { ...shown, file } : shown;
}
