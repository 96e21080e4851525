/**
 * The icons, drawn for this project on a square of 24: lines of two, round ends, the leaf's corners, a needle's dots.
 * A point is a line of no length. They stand beside words and never for them.
 */
import type { PageId } from "../pages/page";

/** Of the deck: what a gloved hand looks for. */
export type DeckIconId = "done" | "yes" | "no" | "confirm" | "again" | "back" | "pause" | "resume" | "accident";
export type IconId = PageId | DeckIconId | "happened" | "everything";

const leaf = "M4 3h10a6 6 0 0 1 6 6v12H10a6 6 0 0 1-6-6z";
const drop = "M12 3S6 10 6 14.5a6 6 0 0 0 12 0C18 10 12 3 12 3z";
const sheet = "M6 3h9l4 4v14H6z";
const tick = "M5 12.5l4.5 4.5L19 7";

export const icons: Readonly<Record<IconId, string>> = {
  prepare: `${leaf}M10 9l5 3-5 3z`,
  records: `${sheet}M9.5 11h6M9.5 14.5h6M9.5 18h3`,
  protocols: "M10 6h10M10 12h10M10 18h10M5 6h.01M5 12h.01M5 18h.01",
  verify: `${sheet}M9 14l2.5 2.5L16 11.5`,
  accident: `${drop}M12 10v4M12 17h.01`,
  shelf: "M3 11h18M3 20h18M6 11V6h3v5M13 11V8h4v3M7 20v-5h4v5M15 20v-4h3v4",
  mixing: "M8 3h8M9.5 3v6L5 18a2 2 0 0 0 2 3h10a2 2 0 0 0 2-3L14.5 9V3M7.5 15h9",
  steriliser: "M12 3a9 9 0 1 0 .01 0zM12 8a4 4 0 1 0 .01 0zM12 12h.01",
  hands:
    "M7 14V8.5a1.5 1.5 0 0 1 3 0V6a1.5 1.5 0 0 1 3 0v1a1.5 1.5 0 0 1 3 0v2a1.5 1.5 0 0 1 3 0v6a6 6 0 0 1-6 6c-3 0-4.5-1-6-3.5L4.5 14A1.5 1.5 0 0 1 7 13",
  due: "M4 6h16v14H4zM4 10.5h16M8 3v4M16 3v4M15.5 15.5h.01",
  place: "M12 21s-7-6.5-7-11a7 7 0 0 1 14 0c0 4.5-7 11-7 11zM12 10h.01",
  keeping: "M4 9h16v11H4zM8 9V7a4 4 0 0 1 8 0v2M12 13.5v2.5",
  welcome: "M3 20h5v-5h5v-5h5V5h3",
  voice: "M4 10v4M8 7v10M12 4v16M16 8v8M20 11v2",
  settings: "M4 7h7M17 7h3M4 17h3M13 17h7M14 5a2 2 0 1 0 .01 0zM10 15a2 2 0 1 0 .01 0z",
  done: tick,
  yes: `${leaf}M8 12.5l3 3 5-6`,
  no: "M6 6l12 12M18 6L6 18",
  /** A name signed on a line. */
  confirm: "M3 20h18M4 15.5c2-7 5-10 6-8.5s-2.5 8.5-.5 8.5 3-5 4.5-5 .5 4.5 2 4.5 2-1 3-2.5",
  again: "M19 12a7 7 0 1 1-2.3-5.2M19 3v4.5h-4.5",
  back: "M14.5 5l-7 7 7 7",
  pause: "M9 5v14M15 5v14",
  resume: "M8 5l11 7-11 7z",
  happened: `${leaf}M12 7.5v5.5M12 16.5h.01`,
  everything: "M6 6h.01M12 6h.01M18 6h.01M6 12h.01M12 12h.01M18 12h.01M6 18h.01M12 18h.01M18 18h.01",
};
