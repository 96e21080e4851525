/** From the two files of a phrase model to its weights, once the digest is right and the phrases are ours. */
import { type Wording, wordings } from "../../intent/wording";
import { widened } from "./half";
import { isWellLaidOut } from "./layout";
import { countOf, type ModelFile, modelFile, type TensorPlace } from "./modelFile";

/** A model that may be used: its description and its numbers. Shared by any number of ears. */
export interface PhraseModel {
  readonly file: ModelFile;
  /** SHA-256 of the binary and of the description (which holds the thresholds), hexadecimal; a record names both. */
  readonly digest: string;
  readonly descriptionDigest: string;
  /** A tensor's numbers; halves are widened each time they are asked for. */
  readonly numbers: (place: TensorPlace) => Float32Array;
}

export type ModelErrorCode = "bad-description" | "wrong-length" | "wrong-digest" | "wrong-phrases" | "bad-layout";
export type LoadedModel =
  | { readonly ok: true; readonly model: PhraseModel }
  | { readonly ok: false; readonly code: ModelErrorCode; readonly message: string };

/**
 * @param description  The text of model.json.
 * @param binary       The bytes of model.bin.
 * @returns The model, or why it may not be used. Both files are treated as hostile; this never rejects.
 */
export async function loadModel(description: string, binary: Uint8Array): Promise<LoadedModel> {
  const file = read(description);
  if (file === null)
    return refuse("bad-description", "the phrase model's description is not of the form phrase-model/1");
  if (binary.length !== file.binary.bytes) {
    return refuse("wrong-length", `the phrase model should have ${file.binary.bytes} bytes and has ${binary.length}`);
  }
  const digest = await sha256(binary);
  if (digest !== file.binary.sha256) return refuse("wrong-digest", "the phrase model does not match its digest");
  const odd = oddPhrase(file);
  if (odd !== null) return refuse("wrong-phrases", `the phrase model was made for other phrases: ${odd}`);
  if (!isWellLaidOut(file)) return refuse("bad-layout", "the phrase model's layers do not fit together");
  const { buffer } = new Uint8Array(binary);
  const numbers = (place: TensorPlace) => {
    const { dtype, byteOffset } = place;
    if (dtype === "float16") return widened(new Uint16Array(buffer, byteOffset, countOf(place)));
    return new Float32Array(buffer, byteOffset, countOf(place));
  };
  const descriptionDigest = await sha256(new TextEncoder().encode(description));
  return { ok: true, model: { file, digest, descriptionDigest, numbers } };
}

const refuse = (code: ModelErrorCode, message: string): LoadedModel => ({ ok: false, code, message });

/** Lower case hexadecimal (FIPS 180-4). */
async function sha256(bytes: Uint8Array): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new Uint8Array(bytes)));
  return [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

function read(description: string): ModelFile | null {
  try {
    const parsed = modelFile.safeParse(JSON.parse(description));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/**
 * A phrase that the model and this program disagree about, or null. A phrase of ours that the model does not know is no
 * disagreement: it has no threshold, and can never be heard.
 */
function oddPhrase({ outputs, decision }: ModelFile): string | null {
  const { addressWords, commandIds, commandWords, firstCommand, language } = outputs;
  if (firstCommand !== 1 + addressWords.length) return "the outputs are not in order";
  const ours: Wording = wordings[language];
  const strangeAddress = addressWords.find((word) => !Object.values(ours.addresses).includes(word));
  if (strangeAddress !== undefined) return strangeAddress;
  const words = new Map<string, string>(Object.entries(ours.commands));
  const isOdd = (id: string) => commandWords[id] !== words.get(id) || decision.thresholds[id] === undefined;
  return commandIds.find((id) => !words.has(id) || isOdd(id)) ?? null;
}
