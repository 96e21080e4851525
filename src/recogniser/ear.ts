/**
 * The ear: 16 kHz sound in chunks of any size, `Heard` out. Pure and deterministic: time is counted in samples, and how
 * the sound was cut does not matter, nor does how fast it comes. Browser, command line and tests run this same class.
 */
import { type AddressWord, type CommandId, commandIds } from "../intent/phrases";
import { lingersMs } from "../intent/sayingNow";
import { type Wording, wordings } from "../intent/wording";
import { Decision } from "./decision/decision";
import { Nearness } from "./decision/nearness";
import { type DecisionSettings, settingsOf } from "./decision/settings";
import type { EchoCanceller } from "./echo/echoCanceller";
import { EchoFree } from "./echo/echoFree";
import { spanSamples, stepSamples } from "./frontEnd/melFrames";
import type { Heard, Rising } from "./heard";
import type { PhraseModel } from "./network/loadModel";
import { PhraseNet } from "./network/phraseNet";
import { headOf } from "./network/weightsOf";
import { type OwnVoice, unpackHead } from "./ownVoice/ownVoice";
import { OwnWords } from "./ownVoice/ownWords";
import { sampleRateHz } from "./sampleRate";
import { Resampler } from "./sound/resample";

export interface EarOptions {
  readonly model: PhraseModel;
  /** A net of this model that no other ear uses, to save making one. */
  readonly net?: PhraseNet;
  /** The word this station answers to. */
  readonly address: AddressWord;
  /** Sampling rate of the sound that will come, 8000–96000. Default 16000. */
  readonly rateHz?: number;
  /** Instead of the model's own thresholds and times. */
  readonly settings?: Partial<DecisionSettings>;
  /** One that has learnt the room already; a new one by default. */
  readonly canceller?: EchoCanceller;
  /** One that knows how loud the artist is; by default nothing is too far away. */
  readonly nearness?: Nearness;
  /** What this artist taught; passed over where it was taught to another model. */
  readonly own?: OwnVoice | null;
}

export class Ear {
  readonly #net: PhraseNet;
  readonly #decision: Decision;
  readonly #nearness: Nearness;
  readonly #ownWords: OwnWords;
  readonly #resampler: Resampler;
  readonly #rateHz: number;
  readonly #echo: EchoFree;
  #played: Resampler | null = null;
  /** Of the sound's own time: until then the room may ring with what the companion played. */
  #ringsUntilMs = Number.NEGATIVE_INFINITY;
  /** The companion has fallen silent, but the sound that has come so far is from while it spoke. */
  #endsGuard = false;
  readonly #addresses: readonly string[];
  /** The station's words in the language of the model. */
  readonly #spoken: Wording["addresses"];
  /** Where each of our commands stands among the model's outputs. */
  readonly #places: readonly number[];
  readonly #outputs: Float64Array;
  readonly #scores = new Float64Array(commandIds.length);
  readonly #held = new Float32Array(4 * spanSamples);
  #heldCount = 0;
  /** Samples of sound, at 16 kHz, that lie before #held. */
  #before = 0;

  /** Nothing is listened for until `allow`. */
  constructor({ model, net, address, rateHz = sampleRateHz, settings, canceller, nearness, own = null }: EarOptions) {
    this.#net = net ?? new PhraseNet(model);
    this.#outputs = new Float64Array(this.#net.commandCount);
    this.#addresses = model.file.outputs.addressWords;
    this.#spoken = wordings[model.file.outputs.language].addresses;
    this.#places = commandIds.map((id) => model.file.outputs.commandIds.indexOf(id));
    const usual = { ...settingsOf(model.file.decision), ...settings };
    const fitting = own?.model === model.digest ? own : null;
    const head = fitting?.head ? unpackHead(fitting.head, headOf(model)) : null;
    const thresholds = { ...usual.thresholds, ...(head ? fitting?.thresholds : {}) };
    this.#net.decideWith(head);
    this.#ownWords = new OwnWords(model, fitting?.words ?? []);
    this.#decision = new Decision(address, { ...usual, thresholds: withOwnWords(thresholds, fitting) });
    this.#nearness = nearness ?? new Nearness();
    this.#nearness.reset();
    this.#resampler = new Resampler(rateHz);
    this.#rateHz = rateHz;
    this.#echo = new EchoFree(canceller);
    this.#net.hearSilence();
  }

  get address(): AddressWord {
    return this.#decision.address;
  }
  set address(word: AddressWord) {
    this.#decision.address = word;
    this.#decision.reset();
  }

  /** Milliseconds of sound taken in so far. */
  get heardMs(): number {
    return ((this.#before + this.#heldCount) * 1000) / sampleRateHz;
  }

  /**
   * From now on only `permitted` commands can act; `refusable` ones are reported with `permitted: false` when they are
   * heard very surely, so that they can be refused aloud. Takes effect with the next 80 ms of sound.
   */
  allow(permitted: Iterable<CommandId>, refusable: Iterable<CommandId> = []): void {
    this.#decision.allow(permitted, refusable);
  }

  /**
   * @param samples  Mono, −1..1, at the rate of the constructor. Not kept.
   * @param played   What the companion itself sent to the loudspeaker meanwhile, as many samples; null for nothing. Its
   *                 echo is taken out of what was heard.
   */
  listen(samples: Float32Array, played: Float32Array | null = null): readonly Heard[] {
    const sound = this.#echo.take(this.#resampler.push(samples), this.#playedAtOurRate(played, samples.length));
    const heard = this.#take(sound);
    if (played !== null) this.#ringsUntilMs = this.heardMs + lingersMs;
    if (this.#endsGuard && this.heardMs >= this.#ringsUntilMs) this.guard(null);
    return heard;
  }

  /** What seems to be said just now. */
  get rising(): Rising | null {
    return this.#decision.rising;
  }

  /**
   * Commands whose words the companion itself is saying just now: they are asked about, and must be heard far more surely. Everything needs
   * to be heard more surely while it says anything; null: it is silent. Sound may come later than this is told, on a device
   * that is slow: while it still holds what the companion played, and shortly after, everything stays as it was.
   */
  guard(saying: Iterable<CommandId> | null): void {
    this.#endsGuard = saying === null && this.heardMs < this.#ringsUntilMs;
    if (!this.#endsGuard) this.#decision.guard(saying);
  }

  /** The sound has ended: a phrase at its very end gets the silence that it needs to be decided. */
  finish(): readonly Heard[] {
    const last = this.#take(this.#echo.finish(this.#resampler.finish()));
    return [...last, ...this.#take(new Float32Array(sampleRateHz))];
  }

  /** Sound was lost for `lostMs`: time goes on, and what was in the air before does not join what comes after. */
  gap(lostMs: number): void {
    const nowAt = this.#before + this.#heldCount + Math.round((lostMs * sampleRateHz) / 1000);
    this.#net.hearSilence();
    this.#ownWords.reset();
    this.#decision.reset();
    this.#nearness.reset();
    this.#heldCount = 0;
    this.#before = nowAt;
  }

  /** Sound that was played, at 16 kHz; null while nothing has ever been played, and then no resampler is needed either. */
  #playedAtOurRate(played: Float32Array | null, count: number): Float32Array | null {
    if (played === null && this.#played === null) return null;
    this.#played ??= new Resampler(this.#rateHz);
    return this.#played.push(played ?? new Float32Array(count));
  }

  #take(samples: Float32Array): readonly Heard[] {
    const heard: Heard[] = [];
    for (let at = 0; at < samples.length; ) {
      const part = samples.subarray(at, at + this.#held.length - this.#heldCount);
      this.#held.set(part, this.#heldCount);
      this.#heldCount += part.length;
      at += part.length;
      this.#stepThrough(heard);
    }
    return heard;
  }

  #stepThrough(heard: Heard[]): void {
    let at = 0;
    for (; at + spanSamples <= this.#heldCount; at += stepSamples) {
      this.#nearness.hear(this.#held, at, stepSamples);
      if (!this.#net.step(this.#held, at)) continue;
      const address = this.#addresses.indexOf(this.#spoken[this.address]);
      if (address < 0) this.#outputs.fill(0);
      else this.#net.probabilities(address, this.#outputs);
      for (const [c, place] of this.#places.entries()) this.#scores[c] = this.#outputs[place] ?? 0;
      for (const [command, p] of this.#ownWords.step(this.#net.embedding)) {
        const c = commandIds.indexOf(command);
        this.#scores[c] = Math.max(this.#scores[c] ?? 0, p);
      }
      const atMs = ((this.#before + at + spanSamples) * 1000) / sampleRateHz;
      const answer = this.#decision.step(atMs, this.#scores);
      if (answer !== null) heard.push(this.#askedIfFar(answer));
    }
    this.#held.copyWithin(0, at, this.#heldCount);
    this.#heldCount -= at;
    this.#before += at;
  }

  #askedIfFar(heard: Heard): Heard {
    if (heard.kind !== "understood" || !heard.permitted || this.#nearness.admits(heard.command, heard.atMs))
      return heard;
    const { address, command, confidence, atMs } = heard;
    return { kind: "unsure", address, candidates: [command], confidences: [confidence], atMs };
  }
}

/** A command that only the artist's own words are known for gets the usual threshold: the model has none. */
const ownWordsThreshold = 0.8;
const withOwnWords = (
  thresholds: DecisionSettings["thresholds"],
  own: OwnVoice | null,
): DecisionSettings["thresholds"] => ({
  ...thresholds,
  ...Object.fromEntries(
    (own?.words ?? []).map(({ command }) => [command, Math.min(ownWordsThreshold, thresholds[command])]),
  ),
});
