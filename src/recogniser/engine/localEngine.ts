/**
 * Our engine behind the Web Speech API: a source of sound, an ear for each language, and what happens between them as
 * engine events. One run at a time; an ear is made when its language is first needed, and stays loaded.
 */

import type { AddressWord } from "../../intent/phrases";
import type { PhraseLanguage } from "../../intent/wording";
import type { SoundSource } from "../../microphone/vocabulary";
import type { OwnVoice } from "../ownVoice/ownVoice";
import type { Engine, EngineEvent, EngineOptions, EngineRun } from "../webSpeech/engine";
import { phraseLanguageOf } from "../webSpeech/languages";
import type { AvailabilityStatus } from "../webSpeech/vocabulary";
import { LanguageEar } from "./languageEar";
import type { EarOrder, EarPort } from "./port";
import { Run } from "./run";

export interface LocalEngineOptions {
  readonly source: SoundSource;
  /** Makes the ear of one language. */
  readonly ear: (language: PhraseLanguage) => EarPort;
  readonly address: AddressWord;
}

export class LocalEngine implements Engine {
  readonly biasesTowardsPhrases = false;
  readonly #options: LocalEngineOptions;
  readonly #ears = new Map<PhraseLanguage, LanguageEar>();
  #runs = 0;
  #address: AddressWord;
  #own: OwnVoice | null = null;
  #artistDb: number | null = null;

  constructor(options: LocalEngineOptions) {
    this.#options = options;
    this.#address = options.address;
  }

  /** The word this station answers to, from now on. */
  get address(): AddressWord {
    return this.#address;
  }
  set address(word: AddressWord) {
    this.#address = word;
    this.tell({ type: "address", address: word });
  }

  availability(lang: string): AvailabilityStatus {
    const language = phraseLanguageOf(lang);
    return language === null ? "unavailable" : (this.#ears.get(language)?.availability ?? "downloadable");
  }

  async install(lang: string): Promise<boolean> {
    const language = phraseLanguageOf(lang);
    return language !== null && (await this.modelOf(language)) !== null;
  }

  /** SHA-256 of the phrase model of a language once it is loaded; null where it cannot be used. */
  modelOf(language: PhraseLanguage): Promise<string | null> {
    return this.#earOf(language).model;
  }

  /** Lets go of an ear whose model could not be used, so that the next one is loaded anew. */
  forgetUnusable(language: PhraseLanguage): void {
    const ear = this.#ears.get(language);
    if (ear?.availability !== "unavailable") return;
    ear.port.close();
    this.#ears.delete(language);
  }

  /** What this artist taught, from the next run on; an ear passes over what was taught to another model. */
  hearWithOwnVoice(own: OwnVoice | null): void {
    this.#own = own;
    this.tell({ type: "own", own });
  }

  /** How loud the artist is in this microphone, in decibels of full scale; null: not known. */
  hearArtistAt(speechDb: number | null): void {
    this.#artistDb = speechDb;
    this.tell({ type: "artist", speechDb });
  }

  /** To every ear that was made. */
  tell(order: EarOrder): void {
    for (const { port } of this.#ears.values()) port.tell(order);
  }

  open(options: EngineOptions, listen: (event: EngineEvent) => void): EngineRun {
    const ear = this.#earOf(phraseLanguageOf(options.lang) ?? "en");
    if (ear.unusableBecause !== null) return deafRun(ear.unusableBecause, listen);
    const { source } = this.#options;
    return new Run({ run: ++this.#runs, source, ear: ear.port, address: () => this.#address, options, listen });
  }

  #earOf(language: PhraseLanguage): LanguageEar {
    const known = this.#ears.get(language);
    if (known) return known;
    const made = new LanguageEar(this.#options.ear(language));
    this.#ears.set(language, made);
    if (this.#own) made.port.tell({ type: "own", own: this.#own });
    if (this.#artistDb !== null) made.port.tell({ type: "artist", speechDb: this.#artistDb });
    return made;
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
