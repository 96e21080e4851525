/** Between the page and the ear, wherever it runs: orders in, reports out. `run` numbers keep one session from another. */
import type { AddressWord, CommandId } from "../../intent/phrases";
import type { Heard, Rising } from "../heard";
import type { ModelErrorCode } from "../network/loadModel";
import type { OwnVoice } from "../ownVoice/ownVoice";

export type EarOrder =
  | {
      readonly type: "open";
      readonly run: number;
      readonly address: AddressWord;
      readonly rateHz: number;
      readonly permitted: readonly CommandId[];
      readonly refusable: readonly CommandId[];
      /** What is still being heard is wanted, too. */
      readonly interim?: boolean;
    }
  /** `sentAtMs` by the clock that page and worker share, to notice an ear that cannot keep up. The arrays change hands. */
  | {
      readonly type: "sound";
      readonly samples: Float32Array;
      readonly played?: Float32Array | null;
      readonly sentAtMs: number;
    }
  /** The companion speaks from now on, these commands' own words among what it says; null: it is silent. */
  | { readonly type: "guard"; readonly commands: readonly CommandId[] | null }
  | { readonly type: "gap"; readonly lostMs: number }
  | { readonly type: "allow"; readonly permitted: readonly CommandId[]; readonly refusable: readonly CommandId[] }
  | { readonly type: "address"; readonly address: AddressWord }
  /** What this artist taught it, from the next "open" on; null for nothing. */
  | { readonly type: "own"; readonly own: OwnVoice | null }
  /** How loud the artist is in this microphone, in decibels of full scale, from now on; null: not known. */
  | { readonly type: "artist"; readonly speechDb: number | null }
  | { readonly type: "finish" };

export type EarReport =
  | {
      readonly type: "ready";
      /** Digests of the binary and of the description, for the record. */
      readonly digest: string;
      readonly descriptionDigest: string;
      /** False for a model made for checking. */
      readonly trained: boolean;
      /** False where the page's policy or the device forbids WebAssembly: some seven times the work. */
      readonly isFast: boolean;
    }
  | { readonly type: "unusable"; readonly code: ModelErrorCode | "unreadable"; readonly message: string }
  | { readonly type: "heard"; readonly run: number; readonly heard: Heard }
  /** Where it is wanted: another command seems to be said, or none any more. */
  | { readonly type: "rising"; readonly run: number; readonly rising: Rising | null }
  /** This device does not keep up: sound is answered so much later than it should be. */
  | { readonly type: "behind"; readonly run: number; readonly behindMs: number }
  | { readonly type: "finished"; readonly run: number };

export interface EarPort {
  tell(order: EarOrder): void;
  /** Reports come later, never from inside `tell`. @returns stops listening. */
  onReport(listen: (report: EarReport) => void): () => void;
  close(): void;
}

/** Milliseconds by a clock that a page and its workers share (W3C High Resolution Time). */
export const sharedNowMs = (): number => performance.timeOrigin + performance.now();
