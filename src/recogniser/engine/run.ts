/** One run of our engine: from opening the source of sound to its end, as the events that SpeechRecognition fires. */

import { type AddressWord, type CommandId, commandIds } from "../../intent/phrases";
import type { OpenSound, RefusedBecause, SoundEvent, SoundSource } from "../../microphone/vocabulary";
import { SoundActivity } from "../soundActivity";
import type { EngineEvent, EngineOptions, EngineRun } from "../webSpeech/engine";
import { type EarPort, type EarReport, sharedNowMs } from "./port";

/** When one answer is wanted and nothing is said for this long, that is an error. Our own choice; the draft gives none. */
const patienceMs = 8000;

export interface RunParts {
  readonly run: number;
  readonly source: SoundSource;
  readonly ear: EarPort;
  readonly address: () => AddressWord;
  readonly options: EngineOptions;
  readonly listen: (event: EngineEvent) => void;
}

export class Run implements EngineRun {
  readonly #parts: RunParts;
  readonly #sound: OpenSound;
  readonly #stopReports: () => void;
  #activity: SoundActivity | null = null;
  #rateHz = 0;
  #soundMs = 0;
  #hasHeardSound = false;
  #permitted: readonly CommandId[] = commandIds;
  #refusable: readonly CommandId[] = [];
  #isOver = false;

  constructor(parts: RunParts) {
    this.#parts = parts;
    this.#stopReports = parts.ear.onReport((report) => this.#takeReport(report));
    this.#sound = parts.source.open(parts.options.track, (event) => this.#takeSound(event));
  }

  stop(): void {
    this.#sound.close();
  }

  abort(): void {
    this.#sound.close();
    queueMicrotask(() => this.#end());
  }

  allow(permitted: Iterable<CommandId>, refusable: Iterable<CommandId> = []): void {
    this.#permitted = [...permitted];
    this.#refusable = [...refusable];
    if (this.#rateHz > 0)
      this.#parts.ear.tell({ type: "allow", permitted: this.#permitted, refusable: this.#refusable });
  }

  #takeSound(event: SoundEvent): void {
    if (this.#isOver) return;
    if (event.type === "opened") this.#begin(event.rateHz);
    else if (event.type === "sound") this.#hear(event.samples, event.played ?? null);
    else if (event.type === "dropped" && event.isHere) this.#parts.ear.tell({ type: "gap", lostMs: event.lostMs });
    else if (event.type === "refused") this.#fail(errorFor[event.reason], event.message);
    else if (event.type === "lost") this.#fail("audio-capture", `the microphone is lost: ${event.reason}`);
    else if (event.type === "closed") this.#finish();
  }

  #begin(rateHz: number): void {
    const { run, ear, address, listen, options } = this.#parts;
    this.#rateHz = rateHz;
    this.#activity = new SoundActivity(rateHz);
    const interim = options.interim === true;
    const [permitted, refusable] = [this.#permitted, this.#refusable];
    ear.tell({ type: "open", run, rateHz, address: address(), permitted, refusable, interim });
    listen({ type: "start" });
    listen({ type: "audiostart" });
  }

  #hear(samples: Float32Array, played: Float32Array | null): void {
    for (const type of this.#activity?.take(samples) ?? []) {
      this.#hasHeardSound = true;
      this.#parts.listen({ type });
    }
    this.#soundMs += (samples.length * 1000) / this.#rateHz;
    this.#parts.ear.tell({ type: "sound", samples, ...(played && { played }), sentAtMs: sharedNowMs() });
    const hasPatience = this.#parts.options.continuous || this.#hasHeardSound || this.#soundMs < patienceMs;
    if (!hasPatience) this.#fail("no-speech", "nothing was said");
  }

  /** No more sound comes; the ear may still have something to say. */
  #finish(): void {
    if (this.#rateHz === 0) this.#end();
    else {
      this.#parts.listen({ type: "audioend" });
      this.#parts.ear.tell({ type: "finish" });
    }
  }

  #takeReport(report: EarReport): void {
    if (this.#isOver) return;
    if (report.type === "unusable") this.#fail("service-not-allowed", report.message);
    else if ("run" in report && report.run === this.#parts.run) {
      if (report.type === "heard") this.#parts.listen({ type: "heard", heard: report.heard });
      if (report.type === "rising")
        this.#parts.listen({ type: "rising", address: this.#parts.address(), rising: report.rising });
      if (report.type === "behind") this.#parts.listen({ type: "behind", behindMs: report.behindMs });
      if (report.type === "finished") this.#end();
    }
  }

  #fail(error: (EngineEvent & { type: "failed" })["error"], message: string): void {
    this.#sound.close();
    this.#parts.listen({ type: "failed", error, message });
    this.#end();
  }

  #end(): void {
    if (this.#isOver) return;
    this.#isOver = true;
    this.#stopReports();
    this.#parts.listen({ type: "ended" });
  }
}

const errorFor: Readonly<Record<RefusedBecause, "not-allowed" | "audio-capture">> = {
  denied: "not-allowed",
  "no-device": "audio-capture",
  busy: "audio-capture",
  unsupported: "audio-capture",
  failed: "audio-capture",
};
