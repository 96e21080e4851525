/**
 * Our engine behind the Web Speech API: a source of sound, an ear, and what happens between them as engine events.
 * One run at a time; the ear stays loaded from one to the next.
 */

import type { AddressWord } from "../../intent/phrases";
import type { SoundSource } from "../../microphone/vocabulary";
import type { Engine, EngineEvent, EngineOptions, EngineRun } from "../webSpeech/engine";
import { isEnglish } from "../webSpeech/languages";
import type { AvailabilityStatus } from "../webSpeech/vocabulary";
import type { EarPort } from "./port";
import { Run } from "./run";

export interface LocalEngineOptions {
  readonly source: SoundSource;
  readonly ear: EarPort;
  readonly address: AddressWord;
}

export class LocalEngine implements Engine {
  readonly biasesTowardsPhrases = false;
  readonly #options: LocalEngineOptions;
  #model: "loading" | "ready" | "unusable" = "loading";
  #unusableBecause = "";
  readonly #settled: Promise<boolean>;
  #runs = 0;
  #address: AddressWord;

  constructor(options: LocalEngineOptions) {
    this.#options = options;
    this.#address = options.address;
    this.#settled = new Promise((settle) => {
      options.ear.onReport((report) => {
        if (report.type !== "ready" && report.type !== "unusable") return;
        this.#model = report.type;
        if (report.type === "unusable") this.#unusableBecause = report.message;
        settle(report.type === "ready");
      });
    });
  }

  /** The word this station answers to, from now on. */
  get address(): AddressWord {
    return this.#address;
  }
  set address(word: AddressWord) {
    this.#address = word;
    this.#options.ear.tell({ type: "address", address: word });
  }

  availability(lang: string): AvailabilityStatus {
    if (!isEnglish(lang) || this.#model === "unusable") return "unavailable";
    return this.#model === "ready" ? "available" : "downloading";
  }

  async install(lang: string): Promise<boolean> {
    return isEnglish(lang) && (await this.#settled);
  }

  open(options: EngineOptions, listen: (event: EngineEvent) => void): EngineRun {
    if (this.#model === "unusable") return deafRun(this.#unusableBecause, listen);
    const { source, ear } = this.#options;
    return new Run({ run: ++this.#runs, source, ear, address: () => this.#address, options, listen });
  }
}

/** With no model there is nothing to open a microphone for; say so at once rather than seem to listen. */
function deafRun(message: string, listen: (event: EngineEvent) => void): EngineRun {
  queueMicrotask(() => {
    listen({ type: "failed", error: "service-not-allowed", message });
    listen({ type: "ended" });
  });
  return { stop() {}, abort() {}, allow() {} };
}
