/**
 * What is said in a stretch, piece by piece, before any of it sounds. Pieces follow one another within a second and are heard
 * as one: so that whatever is acted on was in vain, they never hold this station's address word and, right behind it, a command.
 */
import { type AddressWord, addressWords, type CommandId, commandIds, commands } from "../../../src/intent/phrases";
import { chat, nearMiss } from "./texts";
import { stretches as speeds, type TestVoice } from "./voices";

export interface Piece {
  readonly voice: TestVoice;
  readonly words: string;
  /** How long it lasts, times the voice's own. */
  readonly stretch: number;
}

export type SpokenKind = "talk" | "near misses" | "neighbour";

const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[a-z']+/g) ?? [];
const commandWords = commandIds.map((id) => wordsOf(commands[id]));
const longest = 1 + Math.max(...commandWords.map(({ length }) => length));

/** Punctuation and capitals do not count. */
export function holdsPhrase(text: string, address: AddressWord): boolean {
  const words = wordsOf(text);
  const follows = (command: readonly string[], at: number) => command.every((word, n) => words[at + n] === word);
  return words.some((word, n) => word === address && commandWords.some((command) => follows(command, n + 1)));
}

/**
 * @returns one piece after another, without end. One that would complete a phrase with those before it waits until it no
 * longer does, so that each sort of piece keeps its share; one that is a phrase by itself is never said.
 */
export function piecesOf(
  kind: SpokenKind,
  address: AddressWord,
  voices: readonly TestVoice[],
  random: () => number,
): () => Piece {
  const waiting: Piece[] = [];
  let before = "";
  const fits = ({ words }: Piece) => !holdsPhrase(`${before} ${words}`, address);
  const drawn = (): Piece => {
    const piece = drawnPiece(kind, address, voices, random);
    if (fits(piece)) return piece;
    if (!holdsPhrase(piece.words, address)) waiting.push(piece);
    return drawn();
  };
  return () => {
    const next = waiting.findIndex(fits);
    const piece = next < 0 ? drawn() : (waiting.splice(next, 1)[0] as Piece);
    before = wordsOf(`${before} ${piece.words}`).slice(-longest).join(" ");
    return piece;
  };
}

function drawnPiece(kind: SpokenKind, address: AddressWord, voices: readonly TestVoice[], random: () => number): Piece {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  const voice = pick(voices);
  if (kind === "talk") return { voice, words: pick(chat), stretch: pick(speeds) };
  if (kind === "near misses") return { voice, words: nearMiss(address, random), stretch: 1 };
  const others = addressWords.filter((word) => word !== address);
  return { voice, words: `${pick(others)} ${commands[pick<CommandId>(commandIds)]}`, stretch: 1 };
}
