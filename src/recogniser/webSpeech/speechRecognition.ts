/**
 * The SpeechRecognition interface of the Web Speech API over an engine of our own. Sound never leaves the device, so
 * `processLocally` can always be met. One addition: `allow`, the commands that are listened for now.
 */
import { type AddressWord, type CommandId, commands } from "../../intent/phrases";
import { spoken } from "../../intent/spoken";
import type { PhraseLanguage } from "../../intent/wording";
import type { Heard } from "../heard";
import type { Engine, EngineEvent, EngineRun } from "./engine";
import { EventHandlers } from "./eventHandlers";
import { isLanguageTag, phraseLanguageOf, worst } from "./languages";
import { EventOrder, type StreamEvent } from "./order";
import { SpeechRecognitionPhraseList } from "./phrases";
import {
  type AvailabilityStatus,
  SpeechRecognitionAlternative,
  SpeechRecognitionErrorEvent,
  SpeechRecognitionEvent,
  SpeechRecognitionResult,
  SpeechRecognitionResultList,
} from "./vocabulary";

export interface SpeechRecognitionOptions {
  readonly langs: readonly string[];
  readonly processLocally?: boolean;
}

/** Makes the SpeechRecognition class of one engine. */
export function speechRecognitionOn(engine: Engine) {
  return class SpeechRecognition extends EventHandlers {
    lang = "";
    continuous = false;
    interimResults = false;
    maxAlternatives = 1;
    processLocally = false;
    #phrases = new SpeechRecognitionPhraseList([]);
    #run: { readonly engine: EngineRun; readonly order: EventOrder; stopping: boolean; aborted: boolean } | null = null;
    #finals: SpeechRecognitionResult[] = [];
    #language: PhraseLanguage = "en";
    #permitted: readonly CommandId[] = Object.keys(commands) as CommandId[];
    #refusable: readonly CommandId[] = [];

    /**
     * The worst status among the languages asked for. Without `processLocally` a model that is yet to be fetched will do:
     * `start` fetches it.
     */
    static async available(options: SpeechRecognitionOptions): Promise<AvailabilityStatus> {
      refuseBadTags(options.langs);
      const status = worst(options.langs.map((lang) => engine.availability(lang)));
      return options.processLocally || status === "unavailable" ? status : "available";
    }

    /** True when every language asked for is ready on this device. */
    static async install(options: SpeechRecognitionOptions): Promise<boolean> {
      refuseBadTags(options.langs);
      if (options.langs.length === 0) return false;
      if (options.langs.some((lang) => engine.availability(lang) === "unavailable")) return false;
      const installed = await Promise.all(options.langs.map((lang) => engine.install(lang)));
      return installed.every(Boolean);
    }

    get phrases(): SpeechRecognitionPhraseList {
      return this.#phrases;
    }
    set phrases(list: SpeechRecognitionPhraseList) {
      if (list.length > 0 && !engine.biasesTowardsPhrases) {
        throw new SpeechRecognitionErrorEvent("error", {
          error: "phrases-not-supported",
          message: "this recogniser listens for a closed set of phrases",
        });
      }
      this.#phrases = list;
    }

    /** Ours, not the draft's: only these commands are heard from now on, at once. */
    allow(permitted: Iterable<CommandId>, refusable: Iterable<CommandId> = []): void {
      this.#permitted = [...permitted];
      this.#refusable = [...refusable];
      this.#run?.engine.allow(this.#permitted, this.#refusable);
    }

    start(audioTrack?: MediaStreamTrack): void {
      if (audioTrack !== undefined && (audioTrack.kind !== "audio" || audioTrack.readyState !== "live")) {
        throw new DOMException("the track is not live audio", "InvalidStateError");
      }
      if (this.#run !== null) throw new DOMException("recognition has already started", "InvalidStateError");
      const lang = this.lang || documentLanguage();
      const status = isLanguageTag(lang) ? engine.availability(lang) : "unavailable";
      if (status !== "available" && this.processLocally) {
        const message = `"${lang}" cannot be recognised on this device now`;
        queueMicrotask(() =>
          this.fire(new SpeechRecognitionErrorEvent("error", { error: "service-not-allowed", message })),
        );
        return;
      }
      this.#finals = [];
      this.#language = phraseLanguageOf(lang) ?? "en";
      const order = new EventOrder();
      const options = { lang, continuous: this.continuous, track: audioTrack ?? null };
      const opened =
        status === "unavailable" ? this.#openNothing(lang) : engine.open(options, (event) => this.#take(event));
      this.#run = { engine: opened, order, stopping: false, aborted: false };
      opened.allow(this.#permitted, this.#refusable);
    }

    stop(): void {
      if (this.#run === null || this.#run.stopping || this.#run.aborted) return;
      this.#run.stopping = true;
      this.#run.engine.stop();
    }

    abort(): void {
      if (this.#run === null || this.#run.aborted) return;
      this.#run.aborted = true;
      this.#run.engine.abort();
    }

    /** A run that ends at once, for a language that is not ours. */
    #openNothing(lang: string): EngineRun {
      queueMicrotask(() => {
        this.#take({ type: "failed", error: "language-not-supported", message: `"${lang}" is not supported` });
        this.#take({ type: "ended" });
      });
      return { stop() {}, abort() {}, allow() {} };
    }

    #take(event: EngineEvent): void {
      const run = this.#run;
      if (run === null) return;
      if (event.type === "ended") {
        this.#fireAll(run.order.closeAll());
        this.#run = null;
        this.fire(new Event("end"));
      } else if (event.type === "failed") {
        if (!run.aborted) this.fire(new SpeechRecognitionErrorEvent("error", event));
      } else if (event.type === "heard") {
        if (!run.aborted) this.#answer(event.heard, run.order);
      } else if (event.type === "start") this.fire(new Event("start"));
      else if (event.type !== "behind") this.#fireAll(run.order.of(event.type));
    }

    #answer(heard: Heard, order: EventOrder): void {
      if (!this.continuous && this.#finals.length > 0) return;
      this.#fireAll(order.needAudio());
      if (heard.kind !== "understood") {
        const results =
          heard.kind === "unsure" ? [this.#resultOf(heard.address, heard.candidates, heard.confidences)] : [];
        this.fire(new SpeechRecognitionEvent("nomatch", { results: new SpeechRecognitionResultList(results) }));
        return;
      }
      const resultIndex = this.#finals.length;
      this.#finals = [...this.#finals, this.#resultOf(heard.address, [heard.command], [heard.confidence])];
      const results = new SpeechRecognitionResultList(this.#finals);
      this.fire(new SpeechRecognitionEvent("result", { resultIndex, results }));
      if (!this.continuous) this.stop();
    }

    /** Results after the first begin with a space, so that the transcripts of a session can be joined. */
    #resultOf(
      address: AddressWord,
      ids: readonly CommandId[],
      confidences: readonly number[],
    ): SpeechRecognitionResult {
      const gap = this.#finals.length > 0 ? " " : "";
      const alternatives = ids.map(
        (id, n) => new SpeechRecognitionAlternative(gap + spoken(address, id, this.#language), confidences[n] ?? 0),
      );
      return new SpeechRecognitionResult(alternatives.slice(0, Math.max(1, this.maxAlternatives)), true);
    }

    #fireAll(types: readonly StreamEvent[]): void {
      for (const type of types) this.fire(new Event(type));
    }
  };
}

function refuseBadTags(langs: readonly string[]): void {
  const bad = langs.find((lang) => !isLanguageTag(lang));
  if (bad !== undefined) throw new DOMException(`"${bad}" is not a BCP 47 language tag`, "SyntaxError");
}

const documentLanguage = () => (typeof document === "undefined" ? "" : document.documentElement.lang) || "en";
