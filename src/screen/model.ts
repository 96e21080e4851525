/**
 * What the screens show and what they may ask for. `src/app` fills it in; nothing is decided here. Everything of a
 * session in it is on disk.
 */
import type { SessionState } from "../../machines/session/decide";
import type { SessionEvent, Way } from "../../machines/session/vocabulary";
import type { Tour, TourStop } from "../announcements/tour";
import type { RecordFile } from "../export/recordFile";
import type { HandTimer } from "../hands/timer";
import type { AddressWord, CommandId } from "../intent/phrases";
import type { SoundCheck, SoundVerdict } from "../microphone/soundCheck";
import type { NoteNow } from "../notes/noteTaking";
import type { Protocol } from "../session/protocol";
import type { SessionInput } from "../session/sessionInput";
import type { FetchedOnce } from "./fetchedOnce";
import type { Draft } from "./prepare/draft";
import type { Added } from "./protocols/protocolsModel";
import type { PlanFace } from "./session/planFace";
import type { Settings } from "./settings/settings";
import type { TeachModel } from "./voice/teachModel";
import type { FetchedWords } from "./words/fetchedWords";

export type EarCondition = "off" | "asking" | "on" | "slow" | "none" | "denied" | "lost" | "noModel";

/** Whether it hears at all; late answers are answers. */
export const doesListen = (ear: EarCondition): boolean => ear === "on" || ear === "slow";

/** A sentence that stays on the screen until the next report: a refusal, a deviation, or that nothing was kept. */
export interface Notice {
  readonly kind: "refused" | "deviation" | "notKept";
  readonly text: string;
  /** What came of the file with what is kept so far, where that must be known. */
  readonly file?: SavedFile | undefined;
}

/** `signedOnly`: the store did not answer, and nothing that stands beside the chain is in it. */
export type SavedFile = "whole" | "signedOnly" | "none";

export interface Unfinished {
  readonly session: string;
  /** Null where it was erased. */
  readonly clientReference: string | null;
  readonly protocolName: string;
  readonly entries: number;
}

/** The sound check as it goes on; null before the first. */
export interface SoundCheckView {
  readonly stage: SoundCheck["stage"];
  /** What is to be said now. */
  readonly ask: CommandId | null;
  readonly heard: readonly boolean[];
  readonly verdict: SoundVerdict | null;
}
/** What a chosen file came to. */
export type Importing =
  | { readonly at: "nothing" }
  /** It is proved before it is offered. */
  | { readonly at: "checking" }
  | { readonly at: "added"; readonly added: Added };

export interface PrepareView {
  readonly at: "prepare";
  /** Proved ones only: those that come with the companion, then the studio's own. */
  readonly protocols: readonly Protocol[];
  readonly unfinished: readonly Unfinished[];
  /** Why the last attempt to begin or resume came to nothing; `not-fetched`: a part of the app is not here. */
  readonly trouble: { readonly code: string; readonly message: string } | null;
  readonly importing: Importing;
  readonly busy: boolean;
  readonly ear: EarCondition;
  readonly lastHeard: CommandId | null;
  readonly soundCheck: SoundCheckView | null;
  readonly speaking: string | null;
  readonly hasPractice: boolean;
  /** What the form begins with: remembered from the last time on this device. */
  readonly draft: Draft;
  readonly today: string;
  /** IANA time zone of this device. */
  readonly zone: string;
  /** By station: items that its last session left unready. */
  readonly carriedOver: Readonly<Record<string, readonly string[]>>;
  readonly offline: "no" | "ready" | "waiting";
  /** The browser deleted what it had kept, and nobody has read of it yet. `why` in the browser's words. */
  readonly loss: { readonly day: string; readonly why: string } | null;
}

/** The plan of the breakdown, with the times of day at the station: "16:42". */
export interface PlanView {
  readonly face: PlanFace;
  readonly readyAt: string;
  readonly nextAt: string | null;
}

export interface SessionView {
  readonly at: "session";
  readonly state: SessionState;
  readonly speaking: string | null;
  readonly lastHeard: CommandId | null;
  readonly listenedFor: ReadonlySet<CommandId>;
  readonly notice: Notice | null;
  /** The hand timer, where the artist asked for it. */
  readonly handCount: HandTimer | null;
  readonly ear: EarCondition;
  /** Null outside the breakdown, and where there is no plan. */
  readonly plan: PlanView | null;
  /** A note that is being spoken; null while there is none. */
  readonly note: NoteNow | null;
  readonly isPractice: boolean;
  readonly letterKeys: boolean;
  /** The camera waits for a code to be held up. */
  readonly readsCodes: boolean;
}

export type Sealing =
  | { readonly step: "sealing" }
  | { readonly step: "sealed"; readonly record: RecordFile }
  | { readonly step: "failed"; readonly code: string };

export interface RecordView {
  readonly at: "record";
  readonly state: SessionState;
  readonly sealing: Sealing;
  readonly isPractice: boolean;
}

/** The stop of the tour that is being given. */
export interface TourView {
  readonly stop: TourStop;
  readonly stage: Tour["stage"];
  readonly says: string;
  readonly address: AddressWord;
}

/** What this device has of all that it needs without a network. */
export type DeviceState =
  | { readonly at: "checking" }
  /** This browser keeps nothing for pages. */
  | { readonly at: "cannot" }
  | { readonly at: "bare"; readonly missingBytes: number }
  | { readonly at: "fetching"; readonly doneBytes: number; readonly allBytes: number }
  | { readonly at: "failed"; readonly why: "offline" | "differs" | "noRoom"; readonly missingBytes: number }
  | { readonly at: "ready" };

export type View =
  | { readonly at: "opening" }
  | { readonly at: "stuck"; readonly why: "noSigning" | "noStore" }
  | PrepareView
  | SessionView
  | RecordView;

export interface Asks {
  begin(input: SessionInput, draft: Draft): void;
  resume(session: string): void;
  practise(): void;
  addProtocol(file: Blob): void;
  beginTour(address: AddressWord): void;
  nextInTour(): void;
  endTour(): void;
  /** Fetches what is missing for work without a network. */
  prepareDevice(): void;
  changeSettings(part: Partial<Settings>): void;
  /** On the prepare screen: what is heard is shown and does nothing. */
  tryMicrophone(on: boolean, address: AddressWord): void;
  /** The machine alone, then three phrases, then a verdict. */
  checkSound(address: AddressWord): void;
  /** During a session, after it was refused or lost. */
  retryMicrophone(): void;
  trySpeaker(): void;
  tell(event: SessionEvent, way: Way): void;
  /** A phrase given by key or touch, as if it had been said. */
  command(command: CommandId, way: Way): void;
  saveRecord(): void;
  /** Hands a text over as a file. */
  saveFile(name: string, text: string, type: string): void;
  nextClient(): void;
  /** The loss was read: it is not shown again. */
  lossRead(): void;
  reload(): void;
  update(): void;
}

/** What a screen is given. */
export interface Model {
  readonly view: View;
  subscribe(listen: () => void): () => void;
  /** Loudness of the microphone, 0..1; changes many times a second, so it stands apart. */
  readonly level: { readonly now: number; subscribe(listen: () => void): () => void };
  /** Sound of the microphone that never reached the ear, since it was opened. */
  readonly soundLost: { readonly now: { readonly droppedMs: number }; subscribe(listen: () => void): () => void };
  /** Null while no tour is given. */
  readonly tour: { readonly now: TourView | null; subscribe(listen: () => void): () => void };
  readonly device: { readonly now: DeviceState; subscribe(listen: () => void): () => void };
  readonly settings: { readonly now: Settings; subscribe(listen: () => void): () => void };
  readonly asks: Asks;
  /** Of use once the companion is here. */
  readonly teaching: TeachModel;
  /** Its ear, its voice and all that a session needs: fetched together once the first screen stands. */
  readonly companion: Pick<FetchedOnce<unknown>, "get">;
  readonly words: FetchedWords;
}
