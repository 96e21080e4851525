/**
 * The sentences of one language, as data. A missing entry or a missing slot fails to compile. Slots stand in braces:
 * "{items}: time." Sentences lead with the item they speak of, so that one recording of its name fits everywhere.
 */
import type { AddressWord, CommandId } from "../intent/phrases";
import type { DeviationCode, DiscrepancyReason, Phase, RefusalReason } from "../session/fact";
import type { EventId } from "../session/protocol";
import type { TourStop } from "./tour";
import type { ClockMoment } from "./utterance";

/** A sentence that must hold the slot. */
export type With<Slot extends string> = `${string}{${Slot}}${string}`;
/** A sentence without slots; a test holds it to that. */
export type Plain = string;
/** The same for a named item and for none. */
export interface AboutItem {
  readonly plain: Plain;
  readonly named: With<"item">;
}

export type NotKeptReason = "storageFull" | "writeFailed";
export type EarTrouble = "none" | "denied" | "lost";
/** What an undo would take back. */
export type UndoWhat =
  | "stepDone"
  | "stepSkipped"
  | "applied"
  | "wiped"
  | "ready"
  | "event"
  | "lot"
  | "count"
  | "lastReport";
export type Kept =
  | "paused"
  | "resumed"
  | "undone"
  | "leftOut"
  | "lot"
  | "note"
  | "count"
  | "wiped"
  | "briskOn"
  | "briskOff"
  | "problem";
export type NoteMoment = "recording" | "nothing" | "enough";
export type Caution = "label" | "localRules" | "clinician" | "emergency";

export interface Phrasebook {
  readonly language: "en" | "es";
  /** 0..999 in words. */
  readonly number: (value: number) => string;
  /** Rounded up, never down: a wait announced is never too short. A closed set, so that each has a clip. */
  readonly duration: (ms: number) => string;
  readonly listAnd: Plain;
  /** January to December. */
  readonly months: readonly Plain[];
  /** A day of this century; `year` counts from 2000. */
  readonly dayOf: With<"day"> & With<"month"> & With<"year">;
  readonly letters: Readonly<Record<string, string>>;
  readonly spelling: Readonly<Record<string, string>>;

  /** The reason, and what would make it allowed. */
  readonly refused: Readonly<Record<RefusalReason, AboutItem>>;
  /** What counts now, and what to do about it. */
  readonly deviated: Readonly<Record<DeviationCode, AboutItem>>;
  readonly phase: Readonly<Record<Phase, Plain>>;
  readonly closed: { readonly balanced: Plain; readonly discrepancy: Plain; readonly unready: With<"items"> };
  readonly clock: Readonly<Record<ClockMoment, With<"items">>>;
  /** Until the station is ready for the next client. */
  readonly ready: {
    readonly first: With<"duration">;
    readonly later: With<"duration">;
    readonly sooner: With<"duration">;
  };
  readonly wipedEarly: { readonly plain: With<"duration">; readonly named: With<"item"> & With<"duration"> };

  readonly ask: {
    readonly firstItem: With<"item">;
    readonly nextItem: With<"item">;
    readonly noItem: Plain;
    readonly skipReason: Plain;
    /** After a problem with a step that makes things ready. */
    readonly outOfUse: Plain;
    readonly sharps: {
      readonly none: Plain;
      readonly one: Plain;
      readonly many: With<"opened"> & With<"expected">;
      readonly recount: With<"expected">;
    };
    readonly discrepancy: { readonly first: Plain; readonly reason: Readonly<Record<DiscrepancyReason, Plain>> };
    readonly closing: {
      readonly balanced: With<"opened">;
      readonly discrepancy: Plain;
      readonly deviations: { readonly one: Plain; readonly many: With<"count"> };
      readonly leftOut: { readonly one: Plain; readonly many: With<"count"> };
      readonly confirm: Plain;
    };
    readonly exposure: { readonly firstAid: Plain; readonly choice: Plain; readonly confirmEnd: Plain };
    readonly lot: {
      readonly read: With<"item"> & With<"lot">;
      readonly goodUntil: With<"date">;
      readonly noExpiry: Plain;
      readonly isRight: Plain;
    };
    readonly undo: { readonly question: With<"what">; readonly what: Readonly<Record<UndoWhat, Plain>> };
    readonly whichPhrase: With<"phrase">;
    readonly phrase: Readonly<Record<CommandId, Plain>>;
  };

  readonly answer: {
    readonly noClock: Plain;
    readonly remaining: With<"item"> & With<"duration">;
    readonly waiting: With<"item">;
    readonly stepsLeft: { readonly none: Plain; readonly one: Plain; readonly many: With<"count"> };
    readonly notReady: { readonly all: With<"items">; readonly more: With<"items"> & With<"count"> };
    readonly outOfUse: With<"items">;
    readonly sharpsOut: { readonly one: Plain; readonly many: With<"count"> };
    readonly working: Plain;
    /** The breakdown is walked; how to close. */
    readonly toClose: Plain;
    /** What may be said now: all of it, or the first few. */
    readonly options: { readonly all: With<"phrases">; readonly more: With<"phrases"> };
    /** The camera looks for the code of a pack. */
    readonly holdUp: Plain;
  };

  /** "May I touch the lamp?" A no is followed by its reason (`refused`). */
  readonly mayTouch: {
    readonly no: Plain;
    readonly yes: Readonly<Record<"clean" | "covered" | "bothSoiled", With<"item">>>;
  };

  /** Three words at most. */
  readonly event: Readonly<Record<EventId, Plain>>;
  readonly kept: Readonly<Record<Kept, Plain>>;
  readonly eventItem: With<"item">;
  /** About a spoken note: it records from now on; nobody spoke; the record holds no more of them. */
  readonly note: Readonly<Record<NoteMoment, Plain>>;

  readonly begun: Plain;
  readonly reopened: Plain;
  readonly carriedOver: With<"items">;
  readonly exposure: { readonly ended: Plain; readonly resuming: Plain; readonly resumed: Plain };
  readonly notKept: Readonly<Record<NotKeptReason, Plain>>;
  readonly ear: {
    readonly trouble: Readonly<Record<EarTrouble, Plain>>;
    readonly back: Plain;
    readonly check: Readonly<Record<"machine" | "phrases" | "good" | "fair" | "poor", Plain>>;
    readonly teach: Readonly<
      Record<
        "begin" | "learning" | "better" | "noBetter" | "clipped" | "tooQuiet" | "cutOff" | "other" | "nothing",
        Plain
      >
    > & { readonly ask: With<"address" | "phrase">; readonly addresses: Readonly<Record<AddressWord, Plain>> };
  };
  readonly volume: {
    readonly louder: Plain;
    readonly quieter: Plain;
    readonly loudest: Plain;
    readonly quietest: Plain;
  };
  readonly caution: Readonly<Record<Caution, Plain>>;
  readonly soundCheck: Plain;
  /** The first run: what the companion does, one thing a stop. */
  readonly tour: Readonly<Record<TourStop, Plain>>;
  /** The hand timer; {seconds} are a number. */
  readonly handCount: {
    readonly begun: string;
    readonly enough: string;
    readonly startAgain: Plain;
    readonly short: string;
  };
}
