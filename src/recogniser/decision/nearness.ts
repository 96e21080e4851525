/**
 * Whether a phrase came from where the artist speaks. The sound check tells how loud the artist is in this microphone; a
 * neighbour and another station's companion are farther from it. What is clearly fainter than the artist does not act: it
 * is asked about, and whoever asks again or answers in time is heard from there, too. An artist whose microphone has slipped
 * is asked a few times and then no more. Nothing is faint before a level is known.
 */
import type { CommandId } from "../../intent/phrases";

/** Half the sound pressure: of a voice in the open, twice as far away (inverse square law). Our own choice. */
const faintDb = 6;
/** The companion's question and an answer to it. */
const answerWithinMs = 10_000;
/** In steps of 80 ms. A phrase with what it needs to be decided; its loudest second; enough of the room to know its noise. */
const stepsOfPhrase = 25;
const stepsOfSpeech = 12;
const stepsOfRoom = 75;
/** So many phrases that acted tell where the artist is by now. */
const phrasesKept = 5;

export class Nearness {
  /** Powers of the last steps, full scale 1. */
  readonly #steps: number[] = [];
  #check: number | null = null;
  #acted: number[] = [];
  #answersUntilMs = Number.NEGATIVE_INFINITY;
  #asked: CommandId | null = null;

  /** @param speechDb how loud the artist's voice is, the noise taken out, in decibels of full scale; null: not known. */
  set artist(speechDb: number | null) {
    this.#check = speechDb === null ? null : 10 ** (speechDb / 10);
    this.#acted = Array.from({ length: phrasesKept }, () => this.#check ?? 0);
    this.#answersUntilMs = Number.NEGATIVE_INFINITY;
  }

  /** Another 80 ms of sound: `count` samples from `at`. */
  hear(samples: Float32Array, at: number, count: number): void {
    let squares = 0;
    for (let n = at; n < at + count; n++) squares += (samples[n] as number) ** 2;
    this.#steps.push(squares / count);
    if (this.#steps.length > stepsOfRoom) this.#steps.shift();
  }

  /** Forgets what was in the air, as after a gap in the sound or where its time begins anew. */
  reset(): void {
    this.#steps.length = 0;
    this.#answersUntilMs = Number.NEGATIVE_INFINITY;
  }

  /** @returns whether the command just understood acts; false: it is to be asked about. */
  admits(command: CommandId, atMs: number): boolean {
    if (this.#check === null) return true;
    const speech = this.#speech();
    const isAnswer = atMs <= this.#answersUntilMs && (command === this.#asked || command === "yes" || command === "no");
    if (!isAnswer && speech < this.#usual() * 10 ** (-faintDb / 10)) {
      this.#asked = command;
      this.#answersUntilMs = atMs + answerWithinMs;
      return false;
    }
    this.#answersUntilMs = Number.NEGATIVE_INFINITY;
    this.#acted = [...this.#acted.slice(1), speech];
    return true;
  }

  /** Power of the artist's voice as it is by now: never above the sound check, where people speak up. */
  #usual(): number {
    const sorted = this.#acted.toSorted((a, b) => a - b);
    return Math.min(this.#check ?? 0, sorted[Math.floor(sorted.length / 2)] ?? 0);
  }

  /** Power of what was just said, the room's noise taken out: its quieter quarter, so that it is hardly ever too much. */
  #speech(): number {
    const quiet = this.#steps.toSorted((a, b) => a - b);
    const room = meanOf(quiet.slice(0, Math.ceil(quiet.length / 4)));
    const loud = this.#steps.slice(-stepsOfPhrase).toSorted((a, b) => b - a);
    return Math.max(0, meanOf(loud.slice(0, stepsOfSpeech)) - room);
  }
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
