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
import { SessionResults } from "./results";
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
    #session: Session | null = null;
    #permitted: readonly CommandId[] = Object.keys(commands) as CommandId[];
    #refusable: readonly CommandId[] = [];

    /**
     * The worst status among the languages asked for. Without `processLocally` a model that is yet to be fetched will do:
     * `start` fetches it.
     */
    static async available(options: SpeechRecognitionOptions): Promise<AvailabilityStatus> {
      refuseDetached();
      refuseBadTags(options.langs);
      const status = worst(options.langs.map((lang) => engine.availability(lang)));
      return options.processLocally || status === "unavailable" ? status : "available";
    }

    /** True when every language asked for is ready on this device. */
    static async install(options: SpeechRecognitionOptions): Promise<boolean> {
      refuseDetached();
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
      this.#session?.run?.allow(this.#permitted, this.#refusable);
    }

    start(audioTrack?: MediaStreamTrack): void {
      if (audioTrack !== undefined && (audioTrack.kind !== "audio" || audioTrack.readyState !== "live")) {
        throw new DOMException("the track is not live audio", "InvalidStateError");
      }
      refuseDetached();
      if (this.#session !== null && !this.#session.failed)
        throw new DOMException("recognition has already started", "InvalidStateError");
      const lang = this.lang || documentLanguage();
      const status = isLanguageTag(lang) ? engine.availability(lang) : "unavailable";
      if (status !== "available" && this.processLocally) {
        const message = `"${lang}" cannot be recognised on this device now`;
        queueMicrotask(() =>
          this.fire(new SpeechRecognitionErrorEvent("error", { error: "service-not-allowed", message })),
        );
        return;
      }
      const { continuous, interimResults: interim } = this;
      const session: Session = {
        run: null,
        order: new EventOrder(),
        results: new SessionResults(),
        language: phraseLanguageOf(lang) ?? "en",
        continuous,
        stopping: false,
        aborted: false,
        failed: false,
      };
      const options = { lang, continuous, interim, track: audioTrack ?? null };
      const take = (event: EngineEvent) => this.#take(session, event);
      session.run = status === "unavailable" ? openNothing(lang, take) : engine.open(options, take);
      session.run.allow(this.#permitted, this.#refusable);
      this.#session = session;
    }

    stop(): void {
      const session = this.#session;
      if (session === null || session.stopping || session.aborted || session.failed) return;
      session.stopping = true;
      session.run?.stop();
    }

    abort(): void {
      const session = this.#session;
      if (session === null || session.aborted || session.failed) return;
      session.aborted = true;
      session.run?.abort();
    }

    /** An older session may still have to end while a newer one, begun in its `error` event, runs. */
    #take(session: Session, event: EngineEvent): void {
      if (event.type === "ended") {
        this.#fireAll(session.order.closeAll());
        if (this.#session === session) this.#session = null;
        this.fire(new Event("end"));
      } else if (event.type === "failed") {
        session.failed = true;
        if (!session.aborted) this.fire(new SpeechRecognitionErrorEvent("error", event));
      } else if (event.type === "heard") {
        if (!session.aborted) this.#answer(session, event.heard);
      } else if (event.type === "rising") {
        if (!session.aborted) this.#show(session, event);
      } else if (event.type === "start") this.fire(new Event("start"));
      else if (event.type !== "behind") this.#fireAll(session.order.of(event.type));
    }

    #answer(session: Session, heard: Heard): void {
      if (isAnswered(session)) return;
      this.#fireAll(session.order.needAudio());
      if (heard.kind === "understood") {
        const result = this.#resultOf(session, heard.address, [heard.command], [heard.confidence], true);
        this.fire(session.results.addFinal(result));
        if (!session.continuous) this.stop();
        return;
      }
      this.#fireIfAny(session.results.changeInterim(null));
      const unsure = heard.kind === "unsure" ? [heard] : [];
      const results = unsure.map((each) =>
        this.#resultOf(session, each.address, each.candidates, each.confidences, true),
      );
      this.fire(new SpeechRecognitionEvent("nomatch", { results: new SpeechRecognitionResultList(results) }));
    }

    /** What is still being heard: an interim result, overwritten by the next, by a final, or removed. */
    #show(session: Session, { address, rising }: Extract<EngineEvent, { type: "rising" }>): void {
      if (isAnswered(session)) return;
      if (rising) this.#fireAll(session.order.needAudio());
      const result = rising && this.#resultOf(session, address, [rising.command], [rising.confidence], false);
      this.#fireIfAny(session.results.changeInterim(result));
    }

    /** Results after the first begin with a space, so that the transcripts of a session can be joined. */
    #resultOf(
      { results, language }: Session,
      address: AddressWord,
      ids: readonly CommandId[],
      confidences: readonly number[],
      isFinal: boolean,
    ): SpeechRecognitionResult {
      const gap = results.count > 0 ? " " : "";
      const alternatives = ids.map(
        (id, n) => new SpeechRecognitionAlternative(gap + spoken(address, id, language), confidences[n] ?? 0),
      );
      return new SpeechRecognitionResult(alternatives.slice(0, Math.max(1, this.maxAlternatives)), isFinal);
    }

    #fireIfAny(event: Event | null): void {
      if (event !== null) this.fire(event);
    }

    #fireAll(types: readonly StreamEvent[]): void {
      for (const type of types) this.fire(new Event(type));
    }
  };
}

interface Session {
  run: EngineRun | null;
  readonly order: EventOrder;
  readonly results: SessionResults;
  readonly language: PhraseLanguage;
  /** As it stood when the session was started. */
  readonly continuous: boolean;
  stopping: boolean;
  aborted: boolean;
  /** An error was fired; only `end` is to come, and another session may begin. */
  failed: boolean;
}

/** One answer was wanted, and given. */
const isAnswered = ({ continuous, results }: Session): boolean => !continuous && results.count > 0;

/** A session that ends at once, for a language that is not ours. */
function openNothing(lang: string, take: (event: EngineEvent) => void): EngineRun {
  queueMicrotask(() => {
    take({ type: "failed", error: "language-not-supported", message: `"${lang}" is not supported` });
    take({ type: "ended" });
  });
  return { stop() {}, abort() {}, allow() {} };
}

/** A document that is not fully active, such as of a frame that was removed, may not listen. */
function refuseDetached(): void {
  if (typeof document !== "undefined" && document.defaultView === null)
    throw new DOMException("the document is not fully active", "InvalidStateError");
}

function refuseBadTags(langs: readonly string[]): void {
  const bad = langs.find((lang) => !isLanguageTag(lang));
  if (bad !== undefined) throw new DOMException(`"${bad}" is not a BCP 47 language tag`, "SyntaxError");
}

const documentLanguage = () => (typeof document === "undefined" ? "" : document.documentElement.lang) || "en";
