/**
 * Which recorded clips speak an utterance, and how long that takes. The manifest says where each text lies in a few
 * sprite files; a text without a clip of its own is spoken word by word, and a word without one letter by letter.
 */
import { z } from "zod";
import { bookFor } from "./phrasebooks";
import type { Utterance } from "./utterance";

export const Clip = z.strictObject({
  file: z.string().regex(/^[a-z][A-Za-z0-9.-]*$/),
  startMs: z.number().int().min(0),
  durationMs: z.number().int().min(1),
});

export const ClipManifest = z.strictObject({
  format: z.literal("gloveside-clips"),
  formatVersion: z.literal(1),
  language: z.enum(["en", "es"]),
  clips: z.record(z.string(), Clip),
});

export type Clip = z.infer<typeof Clip>;
export type ClipManifest = z.infer<typeof ClipManifest>;

export type Piece =
  | { readonly say: "clip"; readonly text: string; readonly clip: Clip; readonly pauseBeforeMs: number }
  /** No clip for the whole: a voice of the system if there is a local one, `spelled` otherwise. */
  | {
      readonly say: "text";
      readonly text: string;
      readonly spelled: readonly Clip[];
      readonly unspeakable: readonly string[];
      readonly pauseBeforeMs: number;
    };

/** One recording serves "chair", "Chair" and "chair:"; a question keeps its mark, since it sounds different. */
export const clipKey = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\s+/g, " ")
    .replace(/^[\s.,:;!?¿¡-]+/, "")
    .replace(/[\s.,:;!¿¡-]+$/, "");

/** Silence where the joining punctuation asks for it; after a sentence, a breath. */
const pauseMs = (joint: string): number => (/[.?!]/.test(joint) ? 260 : /[,:;]/.test(joint) ? 120 : 20);

const wordPauseMs = 20;

/** The clips of an utterance in order, with the pauses between. */
export function clipsOf(utterance: Pick<Utterance, "parts">, manifest: ClipManifest): readonly Piece[] {
  const pieces: Piece[] = [];
  let joint = "";
  for (const { text } of utterance.parts) {
    const key = clipKey(text);
    const lead = /^[\s.,:;!?¿¡-]*/.exec(text)?.[0] ?? "";
    if (key !== "") {
      pieces.push(pieceOf(text, key, pieces.length === 0 ? 0 : pauseMs(joint + lead), manifest));
      joint = /[\s.,:;!?¿¡-]*$/.exec(text)?.[0] ?? "";
    } else joint += text;
  }
  return pieces;
}

function pieceOf(text: string, key: string, pauseBeforeMs: number, manifest: ClipManifest): Piece {
  const clip = clipFor(manifest, key);
  if (clip) return { say: "clip", text: text.trim(), clip, pauseBeforeMs };
  const { spelled, unspeakable } = spell(key, manifest);
  return { say: "text", text: text.trim(), spelled, unspeakable, pauseBeforeMs };
}

const clipFor = (manifest: ClipManifest, key: string): Clip | undefined =>
  Object.hasOwn(manifest.clips, key) ? manifest.clips[key] : undefined;

function spell(key: string, manifest: ClipManifest): { spelled: readonly Clip[]; unspeakable: readonly string[] } {
  const { letters } = bookFor(manifest.language);
  const spelled: Clip[] = [];
  const unspeakable: string[] = [];
  for (const word of key.split(/[\s.,:;!?/-]+/).filter(Boolean)) {
    const whole = clipFor(manifest, word);
    const each = whole ? [whole] : [...word].map((letter) => clipFor(manifest, clipKey(letters[letter] ?? letter)));
    for (const clip of each) {
      if (clip) spelled.push(clip);
      else unspeakable.push(word);
    }
  }
  return { spelled, unspeakable };
}

/** How long the utterance sounds, in clips; the same on every machine, so that a rehearsal can keep time by it. */
export function durationMs(utterance: Pick<Utterance, "parts">, manifest: ClipManifest): number {
  return clipsOf(utterance, manifest).reduce((sum, piece) => {
    const clips = piece.say === "clip" ? [piece.clip] : piece.spelled;
    const inside =
      clips.reduce((total, clip) => total + clip.durationMs, 0) + wordPauseMs * Math.max(0, clips.length - 1);
    return sum + piece.pauseBeforeMs + inside;
  }, 0);
}

/** Parts that have no clip as a whole; empty for everything that we ship. */
export const uncovered = (utterance: Pick<Utterance, "parts">, manifest: ClipManifest): readonly string[] =>
  clipsOf(utterance, manifest).flatMap((piece) => (piece.say === "text" ? [piece.text] : []));

/** The sprite files an utterance needs. */
export const filesOf = (utterance: Pick<Utterance, "parts">, manifest: ClipManifest): readonly string[] => [
  ...new Set(
    clipsOf(utterance, manifest).flatMap((piece) =>
      piece.say === "clip" ? [piece.clip.file] : piece.spelled.map(({ file }) => file),
    ),
  ),
];
