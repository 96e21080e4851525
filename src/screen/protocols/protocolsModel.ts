/**
 * What the screens see of the studio's protocols, beside the rows that the studio keeps: which may be worked by, a check
 * in a thread of its own, what a file came to. `src/app` fills it in.
 */
import type { HeardAs } from "../../announcements/heardAs";
import type { Progress, Verdict } from "../../check/checkProtocol";
import type { Protocol, Step } from "../../session/protocol";
import type { ProtocolTrouble } from "../../session/readProtocol";

export type Added =
  /** Proved and kept: a session may be worked by it. `id` differs from the file's where that one was taken. */
  | { readonly kind: "proved"; readonly id: string; readonly name: string; readonly idInFile: string }
  /** Kept as a draft, since it is not proved. */
  | { readonly kind: "draft"; readonly id: string; readonly name: string; readonly why: string }
  /** The same one is there already. */
  | { readonly kind: "there"; readonly id: string; readonly name: string }
  /** No protocol: nothing was kept. */
  | { readonly kind: "trouble"; readonly trouble: ProtocolTrouble }
  | { readonly kind: "notKept"; readonly words: string };

export interface RunningCheck {
  /** Never rejects; one that was stopped is "not proved". */
  readonly verdict: Promise<Verdict>;
  stop(): void;
}

export type Saved =
  | { readonly kind: "proved" }
  | { readonly kind: "draft"; readonly verdict: Verdict }
  | { readonly kind: "notKept"; readonly words: string };

export interface ProtocolsModel {
  /** The bundled ones, then the studio's own that are proved by the code that is here. */
  readonly offered: readonly Protocol[];
  /** By id, of the studio's own: whether it may be worked by, or is being proved again after an update. */
  standing(id: string): "proved" | "checking" | "notProved";
  subscribe(listen: () => void): () => void;
  check(protocol: Protocol, onProgress: (so: Progress) => void): RunningCheck;
  /** Reads, checks and keeps what a file holds. Nothing of a bad file is kept. */
  add(text: string): Promise<Added>;
  /** Opens a draft. @returns null once it is on disk, or why not. */
  keepDraft(protocol: Protocol, saved: Protocol | null): Promise<string | null>;
  /** @param protocol with its next version. Proved, it takes the place of the one before; else it stays a draft. */
  save(protocol: Protocol, act: string): Promise<Saved>;
  /** Hands it over as a file. */
  exportFile(protocol: Protocol): void;
  /** Speaks the announcement of a step as a session in the careful mode would. */
  preview(step: Step): void;
  heardAs(step: Step): HeardAs;
}
