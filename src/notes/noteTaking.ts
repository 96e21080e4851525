/**
 * Takes a spoken note: says "recording", records, and tells the session what was recorded. "Kept" is said by the fact
 * alone, once it is on disk. What is being recorded lies in memory only: a page that dies loses that note and no more.
 *
 *   off ──begin──▶ announced ──it was said──▶ recording ──silence, full, by hand──▶ keeping ──▶ off
 */
import type { SessionEvent, Way } from "../../machines/session/vocabulary";
import type { Utterance } from "../announcements/utterance";
import { attachmentOf, type Writer } from "../log";
import { SoundActivity } from "../recogniser/soundActivity";
import type { Moment } from "../session/keeper";
import { SpokenNote } from "./spokenNote";

/** Thirty of the longest are 38 MB in the record's file; no record has more than 64. */
export const mostNotes = 30;
/** "Recording" takes a second. Where no voice says it, the sign on the screen must do. */
const unsaidMs = 5_000;

export type NoteNow = { readonly at: "announced" | "recording" | "keeping"; readonly leftMs: number };

export interface NoteParts {
  readonly writer: Pick<Writer, "attach">;
  /** Whether there is sound to record. */
  readonly hears: () => boolean;
  /** Mono samples, -1..1, and their rate. */
  readonly tap: (give: (samples: Float32Array, rateHz: number) => void) => () => void;
  readonly tell: (event: SessionEvent, way: Way) => Promise<Moment>;
  readonly say: (what: "recording" | "nothing" | "enough" | "notKept") => void;
  readonly changed: () => void;
  /** Notes that the session holds already. */
  readonly soFar: number;
}

export interface NoteTaking {
  readonly now: NoteNow | null;
  /** @returns false where nothing can be recorded: the event is then only marked. */
  begin(way: Way): boolean;
  /** Ends it where one is being recorded; what was said so far is kept. The fact is told before this returns. */
  end(): void;
  /** A hand gives this now. Whoever uses a hand has gone on: the note so far goes first, but for an accident. */
  byHand(event: SessionEvent["type"]): void;
  /** Told of every moment of the session: an accident or a pause ends the note, and keeps it. */
  after(moment: Moment): void;
  /** Told of each utterance that begins to sound, and of every change of whether anything sounds. */
  sounds(utterance: Utterance): void;
  speaks(isSpeaking: boolean): void;
  close(): void;
}

export function noteTaking(parts: NoteParts): NoteTaking {
  let at: NoteNow["at"] | "off" = "off";
  let way: Way = { by: "app" };
  let note: SpokenNote | null = null;
  let activity: { of: SoundActivity; rateHz: number } | null = null;
  let isBeingSaid = false;
  let waitedMs = 0;
  let kept = parts.soFar;
  let shownS = 0;

  const go = (to: typeof at): void => {
    at = to;
    parts.changed();
  };
  const record = (): void => {
    note = null;
    go("recording");
  };

  const stopTap = parts.tap((samples, rateHz) => {
    if (at === "recording") {
      // It has learnt the room from what came before: somebody may talk from the first moment on.
      note ??= new SpokenNote(rateHz, activity?.rateHz === rateHz ? activity.of : undefined);
      const ending = note.take(samples);
      if (ending === "nobody") abandon();
      else if (ending !== null) end();
      else if (secondsLeft() !== shownS) {
        shownS = secondsLeft();
        parts.changed();
      }
      return;
    }
    if (activity?.rateHz !== rateHz) activity = { of: new SoundActivity(rateHz), rateHz };
    activity.of.take(samples);
    if (at !== "announced") return;
    waitedMs += (samples.length * 1000) / rateHz;
    if (waitedMs >= unsaidMs) record();
  });
  const secondsLeft = () => Math.ceil((note?.leftMs ?? 0) / 1000);

  function abandon(): void {
    note = null;
    go("off");
    parts.say("nothing");
  }

  function end(): void {
    if (at === "announced") go("off");
    if (at !== "recording") return;
    const made = note?.finish() ?? null;
    if (made === null) {
      abandon();
      return;
    }
    const { note: commitment, attachment } = attachmentOf(made.wav);
    note = null;
    parts.writer.attach(commitment, attachment);
    const telling = parts.tell({ type: "note.recorded", note: commitment, lengthMs: made.lengthMs }, way);
    go("keeping");
    void telling.then((moment) => {
      go("off");
      if (!moment.kept) return;
      // A session that was closed meanwhile takes nothing more, and says so by stating nothing.
      if (moment.facts.length === 0) parts.say("notKept");
      else kept += 1;
    });
  }

  return {
    get now() {
      if (at === "off") return null;
      return { at, leftMs: at === "recording" ? (note?.leftMs ?? 30_000) : 0 };
    },
    begin(how) {
      if (at !== "off") return true;
      if (!parts.hears()) return false;
      if (kept >= mostNotes) {
        parts.say("enough");
        return true;
      }
      way = how;
      isBeingSaid = false;
      waitedMs = 0;
      go("announced");
      parts.say("recording");
      return true;
    },
    end,
    byHand: (event) => {
      if (event !== "exposure.reported") end();
    },
    after(moment) {
      const ends = (type: string) => type === "v1.ExposureReported" || type === "v1.Paused";
      if (moment.kept && moment.facts.some(({ type }) => ends(type))) end();
    },
    sounds(utterance) {
      if (at === "announced" && utterance.key === "recording") isBeingSaid = true;
    },
    speaks(isSpeaking) {
      if (at !== "announced" || !isBeingSaid || isSpeaking) return;
      record();
    },
    close() {
      stopTap();
      note = null;
      at = "off";
    },
  };
}
