/** What a language's screen words must hold. A missing or an extra entry fails to compile. */
import type { CameraCondition } from "../../barcode/codeCamera";
import type { CommandId } from "../../intent/phrases";
import type { JournalTroubleCode } from "../../log/journal";
import type { SoundAdvice, SoundVerdict } from "../../microphone/soundCheck";
import type { DiscrepancyReason, Phase, SkipReason } from "../../session/fact";
import type { Label, ProductSlot } from "../../session/protocol";
import type { Hands } from "../../session/station";
import type { SavedFile } from "../model";
import type { PageGroup, PageId } from "../pages/page";
import type { IssueCode } from "../prepare/draft";
import type { Theme } from "../settings/settings";

type Words<K extends string> = Readonly<Record<K, string>>;
/** Why the log kept, read or began nothing. */
type LogTrouble = JournalTroubleCode | "not-proved" | "failed";

export interface ScreenWords {
  /** The way to every page. A lead says in one line what a page is for. */
  readonly pages: Words<"all" | "close" | "fetching" | "notFetched" | "partNotFetched"> & {
    readonly groups: Words<PageGroup>;
    readonly names: Words<PageId>;
    readonly leads: Words<PageId>;
  };
  /** What was just done in the studio's store. */
  readonly kept: Words<"undo" | "hush" | "unreadable"> & {
    readonly done: (act: string) => string;
    readonly says: (text: string) => string;
  };
  /** What a chosen protocol file came to. */
  readonly addedFile: Words<"open" | "not"> & {
    readonly proved: (name: string) => string;
    readonly renamed: (id: string) => string;
    readonly draft: (name: string, why: string) => string;
    readonly there: (name: string) => string;
  };
  /** From the shelf, on the prepare screen. */
  readonly offers: Words<"label" | "lot" | "typed" | "none"> & {
    readonly lotOf: (name: string, lot: string) => string;
    readonly labelOf: (name: string, about: string, wetFor: string) => string;
  };
  readonly first: Words<
    | "tour"
    | "tourHint"
    | "beginTour"
    | "tourAgain"
    | "tourOver"
    | "heard"
    | "next"
    | "endTour"
    | "practise"
    | "orPrepare"
    | "voicePicture"
    | "offer"
  > & { readonly of: (at: number, count: number) => string };
  readonly device: Words<"checking" | "ready" | "cannot" | "fetching" | "prepare"> & {
    readonly bare: (size: string) => string;
    readonly of: (done: string, all: string) => string;
    readonly failed: Words<"offline" | "differs" | "noRoom">;
  };
  readonly settings: Words<"look" | "theme" | "themeHint" | "languageHint" | "device"> & {
    readonly themes: Words<Theme>;
    readonly version: (version: string) => string;
  };
  /** On paper, and on the screens that make or check it. */
  readonly language: string;
  readonly opening: string;
  readonly logTrouble: Words<LogTrouble>;
  readonly stuck: Words<"title" | "why" | "noSigning" | "noStore" | "reload">;
  readonly prepare: Words<
    | "unfinished"
    | "resume"
    | "protocol"
    | "import"
    | "importAbout"
    | "checking"
    | "who"
    | "client"
    | "clientHint"
    | "artist"
    | "station"
    | "address"
    | "addressHint"
    | "language"
    | "pace"
    | "careful"
    | "carefulAbout"
    | "brisk"
    | "briskAbout"
    | "letterKeys"
    | "letterKeysHint"
    | "products"
    | "productsHint"
    | "otherProducts"
    | "productName"
    | "contact"
    | "reapply"
    | "reapplyHint"
    | "minutes"
    | "seconds"
    | "oneStep"
    | "afterwards"
    | "expiry"
    | "lots"
    | "lotsHint"
    | "readsCodes"
    | "readsCodesHint"
    | "lot"
    | "carriedOver"
    | "carriedOverHint"
    | "sound"
    | "microphone"
    | "tryMicrophone"
    | "stopMicrophone"
    | "speaker"
    | "trySpeaker"
    | "speakerAbout"
    | "check"
    | "checkAbout"
    | "checkMachine"
    | "practice"
    | "practiceAbout"
    | "noPractice"
    | "cautions"
    | "start"
    | "starting"
    | "mend"
  > & {
    readonly lost: Words<"title" | "about" | "read"> & { readonly found: (day: string, why: string) => string };
    readonly unfinishedAbout: (client: string, entries: number) => string;
    readonly cannotResume: (why: string) => string;
    readonly steps: (count: number) => string;
    readonly about: (steps: number, version: string) => string;
    /** What was done, for the line that offers to undo it. */
    readonly added: (name: string) => string;
    readonly uses: Words<ProductSlot["use"]>;
    readonly after: Words<Label["afterwards"]>;
    readonly heardNow: (phrase: string) => string;
    readonly saySomething: (phrase: string) => string;
    readonly verdict: Words<SoundVerdict["grade"]>;
    readonly advice: Words<SoundAdvice>;
    readonly measured: (ratioDb: number, understood: number) => string;
    readonly checkPhrases: Words<"heard" | "missed" | "now" | "waiting">;
    readonly cautionList: readonly string[];
    readonly issues: Words<IssueCode>;
    readonly offline: Words<"waiting" | "update">;
  };
  readonly codes: Words<
    | "read"
    | "stop"
    | "holdUp"
    | "preview"
    | "noDate"
    | "past"
    | "monthOnly"
    | "malformed"
    | "noLot"
    | "unsure"
    | "retype"
  > & {
    readonly camera: Words<CameraCondition>;
    readonly says: (lot: string, expiry: string | null) => string;
    readonly takeFor: (item: string) => string;
    readonly taken: (item: string) => string;
  };
  readonly ear: Words<"off" | "asking" | "on" | "slow" | "none" | "denied" | "lost" | "noModel" | "hint" | "retry"> & {
    /** Sound that never reached the ear, in seconds with one decimal. */
    readonly soundLost: (seconds: string) => string;
  };
  /** The sign of a note that is being spoken. */
  readonly note: Words<"title" | "announced" | "recording" | "keeping" | "stop" | "only"> & {
    readonly left: (seconds: number) => string;
  };
  readonly session: Words<
    | "now"
    | "next"
    | "last"
    | "secondsLeft"
    | "resuming"
    | "atWork"
    | "atWorkSay"
    | "listOver"
    | "listOverSay"
    | "mayClose"
    | "mayCloseSay"
    | "firstAid"
    | "paused"
    | "clocks"
    | "noClocks"
    | "plan"
    | "changeGloves"
    | "says"
    | "silent"
    | "heard"
    | "nothingHeard"
    | "happened"
    | "everything"
    | "maySay"
    | "keys"
    | "close"
    | "practice"
    | "saveSoFar"
  > & {
    /** What came of the file with what is kept so far. */
    readonly savedFile: Words<SavedFile>;
    /** "Free at 16:42" and what is to be done until then. */
    readonly freeAt: (time: string, minutes: number) => string;
    readonly nextSetUpAt: (time: string) => string;
    readonly planWithout: (outOfUse: string) => string;
    readonly wetAgain: (step: string) => string;
    readonly inMinutes: (step: string, minutes: number) => string;
    readonly of: (at: number, count: number) => string;
    readonly phase: Words<Phase>;
    readonly hands: Words<Hands>;
    readonly clock: Words<"counting" | "reapply" | "doubtful" | "dry" | "timeUp" | "ready">;
    readonly sharps: (opened: number, binned: number) => string;
    readonly asks: Words<
      | "item"
      | "fewer"
      | "more"
      | "discrepancy"
      | "reason"
      | "close"
      | "undo"
      | "exposureEnd"
      | "firstAid"
      | "wetness"
      | "outOfUse"
    > & {
      readonly sharps: (expected: number) => string;
      readonly lot: (item: string, lot: string, expiry: string | null) => string;
      readonly countIs: (count: number) => string;
      readonly phrase: (phrase: string) => string;
    };
    readonly reasons: Words<SkipReason>;
    readonly discrepancies: Words<DiscrepancyReason>;
    /** Things taken out of use. `key`: which key asks for it. */
    readonly outOfUse: Words<"title" | "take"> & { readonly back: (item: string) => string };
    readonly groups: Words<"goOn" | "answer" | "ask" | "happens" | "voice">;
    readonly keyboard: Words<"title" | "pedal" | "done" | "accident">;
  };
  /** Short, for a touch target; the phrase itself stands beneath it. */
  readonly command: Words<CommandId>;
  /** In place of a client's reference that was erased or never given. */
  readonly noClient: string;
  readonly record: Words<
    | "title"
    | "sealed"
    | "notSealed"
    | "sealing"
    | "practice"
    | "save"
    | "saveHint"
    | "again"
    | "balanced"
    | "unready"
    | "allReady"
    | "figures"
    | "deviations"
    | "noDeviations"
    | "proves"
  > & {
    readonly sealFailed: (why: string) => string;
    readonly discrepancy: (why: string) => string;
    readonly figure: Words<
      | "client"
      | "artist"
      | "station"
      | "protocol"
      | "entries"
      | "sharps"
      | "wet"
      | "deviations"
      | "leftOut"
      | "refused"
      | "gaps"
    >;
  };
}
