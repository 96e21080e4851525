/** What the page "your voice" shows and asks for. `src/app` fills it in. */
import type { AddressWord, CommandId } from "../../intent/phrases";
import type { TakeTrouble } from "../../recogniser/ownVoice/takeCheck";

export type TeachTrouble = "noModel" | "noMicrophone" | "nothingTaught" | "notKept";

export interface Taught {
  readonly taughtAt: string;
  readonly address: AddressWord;
  readonly takes: number;
  /** Share of held-back takes, over a machine, that were understood. */
  readonly before: number;
  readonly after: number;
  /** False where the model's own layer was kept because the taught one was no better. */
  readonly isUsed: boolean;
  readonly words: readonly CommandId[];
  /** False for what was taught to another phrase model. */
  readonly fits: boolean;
}

export interface TeachNow {
  readonly state: "idle" | "opening" | "asking" | "listening" | "checking" | "learning";
  readonly ask: { readonly command: CommandId; readonly take: number } | null;
  readonly phrasesDone: number;
  readonly phrases: number;
  readonly lastTrouble: TakeTrouble | null;
  readonly trouble: TeachTrouble | null;
  readonly taught: Taught | null;
  readonly learntMs: number | null;
  readonly canUndo: boolean;
}

/** Before anything was asked, or is known of what was taught. */
export const notTeaching: TeachNow = {
  state: "idle",
  ask: null,
  phrasesDone: 0,
  phrases: 0,
  lastTrouble: null,
  trouble: null,
  taught: null,
  learntMs: null,
  canUndo: false,
};

export const takesEach = 3;

export interface TeachModel {
  readonly now: TeachNow;
  subscribe(listen: () => void): () => void;
  /** Call only after consent was given. @param ownWords The artist says words of their own for these commands. */
  begin(address: AddressWord, commands: readonly CommandId[], ownWords: boolean): void;
  /** No more takes; what was given so far is learnt. */
  enough(): void;
  /** Nothing is learnt. */
  cancel(): void;
  undo(): void;
  forget(): void;
  saveFile(): void;
}
