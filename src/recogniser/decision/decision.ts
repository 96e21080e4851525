/**
 * From probabilities to an answer. Every 80 ms one number for each command comes in; now and then a `Heard` goes out.
 *
 *   below ──rises──▶ near ──one passes its threshold──▶ understood ──▶ quiet for a while
 *                     │ ──two share what one lacks─────▶ unsure
 *                     └──falls─────────────────────────▶ noise
 *
 * A command counts only if it rose while it was listened for: what was said before it was allowed, or while the
 * companion itself spoke, cannot act afterwards.
 */
import { type AddressWord, type CommandId, commandIds } from "../../intent/phrases";
import type { Heard, Rising } from "../heard";
import type { DecisionSettings } from "./settings";

/** An accident must never wait for an answer, and silence harms nobody. */
const actsAtOnce: ReadonlySet<CommandId> = new Set(["accident", "hush"]);

interface Doubt {
  readonly sinceMs: number;
  readonly mass: number;
  readonly candidates: readonly CommandId[];
  readonly confidences: readonly number[];
}

export class Decision {
  address: AddressWord;
  readonly #settings: DecisionSettings;
  readonly #recent: Float64Array[] = [];
  readonly #smooth = new Float64Array(commandIds.length);
  /** True once a command has been seen low while nothing stood against it. */
  readonly #armed = new Uint8Array(commandIds.length);
  readonly #permitted = new Uint8Array(commandIds.length);
  readonly #refusable = new Uint8Array(commandIds.length);
  readonly #guarded = new Uint8Array(commandIds.length);
  #isSpeaking = false;
  #quietUntilMs = Number.NEGATIVE_INFINITY;
  /** A doubt between two, since when, and its clearest moment so far. */
  #doubt: Doubt | null = null;
  #nearSteps = 0;
  #rising: Rising | null = null;

  constructor(address: AddressWord, settings: DecisionSettings) {
    this.address = address;
    this.#settings = settings;
  }

  /**
   * From now on `permitted` may act; `refusable` are listened for at a stricter threshold and reported with
   * `permitted: false`, so that they can be refused aloud; all others are not listened for.
   */
  allow(permitted: Iterable<CommandId>, refusable: Iterable<CommandId> = []): void {
    this.#permitted.fill(0);
    this.#refusable.fill(0);
    for (const id of permitted) this.#permitted[commandIds.indexOf(id)] = 1;
    for (const id of refusable) this.#refusable[commandIds.indexOf(id)] = 1;
    this.#doubt = null;
  }

  /**
   * @param saying  Commands whose words the companion itself is saying just now: heard very surely they are asked about, else
   *                not at all. Empty for a sentence with none, null while it is silent.
   */
  guard(saying: Iterable<CommandId> | null): void {
    this.#isSpeaking = saying !== null;
    this.#guarded.fill(0);
    for (const id of saying ?? []) this.#guarded[commandIds.indexOf(id)] = 1;
  }

  /** Forgets what was in the air, as after a gap in the sound. What is allowed stays. */
  reset(): void {
    this.#recent.length = 0;
    this.#armed.fill(0);
    this.#quietUntilMs = Number.NEGATIVE_INFINITY;
    this.#doubt = null;
    this.#nearSteps = 0;
    this.#rising = null;
  }

  /** What seems to be said just now and may be acted on; null where nothing comes near. Decides nothing. */
  get rising(): Rising | null {
    return this.#rising;
  }

  /** @param scores Probability of this station's address with each command, in the order of `commandIds`. Copied. */
  step(atMs: number, scores: ArrayLike<number>): Heard | null {
    this.#blend(scores);
    const isQuiet = atMs < this.#quietUntilMs;
    for (let c = 0; c < commandIds.length; c++) {
      const isLow = (this.#smooth[c] as number) < this.#settings.rearmBelow;
      if (isLow) this.#armed[c] = 1;
      else if (isQuiet || !this.#isListenedFor(c)) this.#armed[c] = 0;
    }
    this.#rising = null;
    if (isQuiet) return null;
    const [first, second] = this.#bestTwo();
    const command = this.#permitted[first] === 1 && this.#guarded[first] === 0 ? commandIds[first] : undefined;
    const confidence = this.#smooth[first] as number;
    if (command !== undefined && confidence >= this.#settings.rearmBelow) this.#rising = { command, confidence };
    return this.#understood(atMs, first) ?? this.#unsure(atMs, first, second) ?? this.#noise(atMs, first);
  }

  #understood(atMs: number, best: number): Heard | null {
    const command = commandIds[best];
    if (command === undefined) return null;
    const confidence = this.#smooth[best] as number;
    const permitted = this.#permitted[best] === 1;
    const needed = Math.max(
      this.#settings.thresholds[command],
      permitted ? 0 : this.#settings.refuseAbove,
      this.#guarded[best] === 1 ? this.#settings.guardAbove : 0,
      // An accident is never passed over; less sure than this it is asked about.
      this.#isSpeaking && command !== "accident" ? this.#settings.speakingAbove : 0,
    );
    if (confidence < needed) return null;
    this.#settle(atMs);
    // Behind the artist's address word its own words make a whole phrase, and what is left of its voice may sound like one.
    const isItsOwn = this.#guarded[best] === 1 && !actsAtOnce.has(command);
    if (permitted && (isItsOwn || (this.#isSpeaking && confidence < this.#settings.speakingAbove)))
      return { kind: "unsure", address: this.address, candidates: [command], confidences: [confidence], atMs };
    return { kind: "understood", address: this.address, command, confidence, permitted, atMs };
  }

  #unsure(atMs: number, best: number, second: number): Heard | null {
    const { unsureMass, unsureShare, patienceMs } = this.#settings;
    const [likelier, other] = [commandIds[best], commandIds[second]];
    const isGuarded = this.#guarded[best] === 1 || this.#guarded[second] === 1;
    if (likelier !== undefined && other !== undefined && !isGuarded) {
      const confidences = [this.#smooth[best] as number, this.#smooth[second] as number] as const;
      const mass = confidences[0] + confidences[1];
      if (confidences[1] >= unsureShare && mass >= unsureMass) {
        const sinceMs = this.#doubt?.sinceMs ?? atMs;
        if (mass > (this.#doubt?.mass ?? 0))
          this.#doubt = { sinceMs, mass, candidates: [likelier, other], confidences };
        if (atMs - sinceMs < patienceMs) return null;
      }
    }
    const doubt = this.#doubt;
    this.#doubt = null;
    if (doubt === null || atMs - doubt.sinceMs < patienceMs) return null;
    this.#settle(atMs);
    return {
      kind: "unsure",
      address: this.address,
      candidates: doubt.candidates,
      confidences: doubt.confidences,
      atMs,
    };
  }

  #noise(atMs: number, best: number): Heard | null {
    const isNear = best >= 0 && (this.#smooth[best] as number) >= this.#settings.rearmBelow;
    const wasNear = this.#nearSteps >= this.#settings.noiseSteps;
    this.#nearSteps = isNear ? this.#nearSteps + 1 : 0;
    return wasNear && !isNear ? { kind: "noise", atMs } : null;
  }

  /** Something was said: nothing more for a moment, and each command must fall before it may rise again. */
  #settle(atMs: number): void {
    this.#quietUntilMs = atMs + this.#settings.refractoryMs;
    this.#rising = null;
    this.#armed.fill(0);
    this.#doubt = null;
    this.#nearSteps = 0;
  }

  #isListenedFor(c: number): boolean {
    return this.#permitted[c] === 1 || this.#refusable[c] === 1;
  }

  #blend(scores: ArrayLike<number>): void {
    this.#recent.push(Float64Array.from(scores));
    if (this.#recent.length > this.#settings.smoothSteps) this.#recent.shift();
    for (let c = 0; c < commandIds.length; c++) {
      let sum = 0;
      for (const past of this.#recent) sum += past[c] ?? 0;
      this.#smooth[c] = sum / this.#settings.smoothSteps;
    }
  }

  /** Indices of the two likeliest commands that may be heard now; −1 where there is none. */
  #bestTwo(): readonly [number, number] {
    let first = -1;
    let second = -1;
    for (let c = 0; c < commandIds.length; c++) {
      if (this.#armed[c] !== 1 || !this.#isListenedFor(c)) continue;
      const p = this.#smooth[c] as number;
      if (first < 0 || p > (this.#smooth[first] as number)) {
        second = first;
        first = c;
      } else if (second < 0 || p > (this.#smooth[second] as number)) second = c;
    }
    return [first, second];
  }
}
