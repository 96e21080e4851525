/**
 * Takes one artist's takes as they come, refuses bad ones with the reason, and learns. Runs in a worker: every take costs some
 * tenths of a second when it is given and as much while it is studied, the learning at the end a few seconds. The recordings
 * are gone with the teacher.
 */
import type { AddressWord, CommandId } from "../../intent/phrases";
import type { PhraseModel } from "../network/loadModel";
import { PhraseNet } from "../network/phraseNet";
import { headOf } from "../network/weightsOf";
import { sampleRateHz } from "../sampleRate";
import { resample } from "../sound/resample";
import { Joint } from "./joint";
import { addressAt, commandAt, learnVoice, type OwnHead, outputsOf, type Take } from "./learn";
import { type Lesson, lessonOf, type SaidPhrase } from "./lesson";
import type { OwnVoice } from "./ownVoice";
import { packHead, packTemplate } from "./ownVoice";
import { compared, evenDistance } from "./ownWords";
import { momentsOf } from "./summaries";
import { checkTake, type TakeTrouble } from "./takeCheck";
import { nearest, type Template } from "./templates";

export type TakeAnswer = { readonly ok: true } | { readonly ok: false; readonly trouble: TakeTrouble };

interface Kept {
  readonly command: CommandId;
  readonly ownWords: boolean;
  readonly said: SaidPhrase;
  readonly clean: Take;
  readonly template: Template;
}
type Studied = Kept & Lesson;

/** Surer than this that it was another phrase, it was another phrase. */
const otherAbove = 0.7;
/** How far takes of one phrase may lie apart. */
const takesApart = 1.3 * evenDistance;

export class Teacher {
  readonly #model: PhraseModel;
  readonly #net: PhraseNet;
  readonly #address: AddressWord;
  readonly #negatives: readonly Float32Array[];
  readonly #compared: (embedding: Float32Array) => Float32Array;
  readonly #kept: Kept[] = [];
  /** Of takes of our phrases, what they teach: one for one, the newest perhaps not yet. */
  readonly #studied: Studied[] = [];

  /** @param negatives as `readNegatives` gives them. */
  constructor(model: PhraseModel, address: AddressWord, negatives: readonly Float32Array[]) {
    this.#model = model;
    this.#net = new PhraseNet(model);
    this.#address = address;
    this.#negatives = negatives;
    this.#compared = compared(model);
  }

  /** @param ownWords The artist says something of their own for this command, in whatever language. */
  take(command: CommandId, ownWords: boolean, recorded: Float32Array, rateHz: number): TakeAnswer {
    const sound = resample(recorded, rateHz);
    const checked = checkTake(sound, sampleRateHz);
    if (!checked.ok) return checked;
    const { startMs, endMs } = checked;
    const clean: Take = { command, endMs, moments: momentsOf(this.#net, sound) };
    const within = clean.moments.filter(({ atMs }) => atMs >= startMs + 100 && atMs <= endMs + 240);
    const template = { steps: within.map(({ embedding }) => this.#compared(embedding)) };
    if (template.steps.length < 3) return { ok: false, trouble: "nothing" };
    if (this.#isOther(command, ownWords, clean, template)) return { ok: false, trouble: "other" };
    this.#kept.push({ command, ownWords, said: { command, sound, startMs, endMs }, clean, template });
    return { ok: true };
  }

  /** What a good take teaches beside itself: apart from `take`, so that the artist need not wait for it. */
  study(): void {
    const ours = this.#ours();
    for (const kept of ours.slice(this.#studied.length)) {
      const before = this.#studied.map(({ said }) => said);
      const lesson = lessonOf(this.#model, this.#net, this.#address, kept.said, before, before.length);
      this.#studied.push({ ...kept, ...lesson });
    }
  }

  /** Not like the takes before it; or, of a phrase of ours, plainly another one. */
  #isOther(command: CommandId, ownWords: boolean, { moments }: Take, template: Template): boolean {
    const before = this.#kept.filter((kept) => kept.command === command && kept.ownWords === ownWords);
    const apart = before.map((kept) => nearest(kept.template, [...template.steps]));
    if (apart.length > 0) return Math.min(...apart) > takesApart;
    if (ownWords) return false;
    const joint = new Joint(headOf(this.#model), outputsOf(this.#model));
    const [address, own] = [addressAt(this.#model, this.#address), commandAt(this.#model, command)];
    return moments.some(({ summary }) => {
      joint.see(summary);
      return this.#model.file.outputs.commandIds.some((_, c) => c !== own && joint.p(address, c) > otherAbove);
    });
  }

  /** @returns null where nothing was taught. */
  learn(consentAt: string, taughtAt: string): OwnVoice | null {
    this.study();
    const ours = this.#studied;
    const words = this.#words();
    if (ours.length === 0 && words.length === 0) return null;
    const learnt = (from: readonly Studied[]): OwnHead => {
      const takes = from.flatMap(({ clean, noisy, paced }) => [clean, noisy, paced]);
      const crossings = from.flatMap((one) => one.crossings);
      return learnVoice(this.#model, this.#address, takes, crossings, this.#negatives);
    };
    // The last take of each phrase is held back once, to see what the others are worth.
    const isLast = (kept: Studied) => ours.findLast(({ command }) => command === kept.command) === kept;
    const heldBack = ours.filter(isLast);
    const rest = ours.filter((kept) => !isLast(kept));
    const usual: OwnHead = { head: headOf(this.#model), thresholds: this.#model.file.decision.thresholds };
    const before = this.#share(heldBack, usual);
    const after = rest.length === 0 ? before : this.#share(heldBack, learnt(rest));
    const isBetter = ours.length > 0 && after >= before;
    const own = isBetter ? learnt(ours) : null;
    return {
      format: "gloveside-own-voice/1",
      model: this.#model.digest,
      address: this.#address,
      consentAt,
      taughtAt,
      head: own && packHead(own.head),
      thresholds: own?.thresholds ?? {},
      words,
      figures: { takes: this.#kept.length, before, after: isBetter ? after : before },
    };
  }

  /** The share of these takes, over a machine, that would be acted on. */
  #share(takes: readonly Studied[], { head, thresholds }: OwnHead): number {
    const joint = new Joint(head, outputsOf(this.#model));
    const address = addressAt(this.#model, this.#address);
    const isHeard = ({ command, noisy }: Studied): boolean => {
      const sure = noisy.moments.map(({ summary }) => {
        joint.see(summary);
        return joint.p(address, commandAt(this.#model, command));
      });
      return sure.some((p, n) => n > 0 && (p + (sure[n - 1] as number)) / 2 >= (thresholds[command] ?? 1));
    };
    return takes.length === 0 ? 0 : takes.filter(isHeard).length / takes.length;
  }

  #ours(): readonly Kept[] {
    return this.#kept.filter((kept) => !kept.ownWords && commandAt(this.#model, kept.command) >= 0);
  }

  #words(): OwnVoice["words"] {
    const own = this.#kept.filter((kept) => kept.ownWords);
    return [...new Set(own.map(({ command }) => command))].map((command) => ({
      command,
      size: this.#model.file.stream.embeddingSize,
      takes: own.filter((kept) => kept.command === command).map(({ template }) => packTemplate(template)),
    }));
  }
}
