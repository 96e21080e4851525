/**
 * Microphone or recording into the recogniser. The listening chart decides when to open, to try again and to call the
 * ear lost; here its orders are carried out, and what is heard is handed on.
 */
import { decideListening, type ListeningState, startListening } from "../../machines/listening/decide";
import type { ListeningEvent, ListeningOrder, LostBecause } from "../../machines/listening/vocabulary";
import type { AddressWord, CommandId } from "../intent/phrases";
import { type PieceInTheAir, sayingNow, stillInTheAir } from "../intent/sayingNow";
import type { PhraseLanguage } from "../intent/wording";
import {
  onMicrophonesChanged,
  onPermissionChanged,
  type Processing,
  type SoundEvent,
  type SoundSource,
} from "../microphone";
import { LocalEngine } from "../recogniser/engine/localEngine";
import type { EarPort } from "../recogniser/engine/port";
import type { Heard } from "../recogniser/heard";
import type { OwnVoice } from "../recogniser/ownVoice/ownVoice";
import type { EngineEvent, EngineRun } from "../recogniser/webSpeech/engine";
import type { EarCondition } from "../screen/model";
import { type Watched, watchedValue } from "./watchedValue";

/** Who is told what is heard and how the ear is. */
export interface HearingListener {
  heard(heard: Heard): void;
  talk(isOn: boolean): void;
  lost(because: LostBecause): void;
  back(): void;
}

/** How well the ear works, beside whether it does. Since the source was opened. */
export interface HearingQuality {
  /** Sound that never arrived, in milliseconds. */
  readonly droppedMs: number;
  /** How late the last answer came, when it came too late; 0 while this device keeps up. */
  readonly behindMs: number;
}

/** Mono sound as the microphone gives it, and its rate. */
export type SoundTap = (samples: Float32Array, rateHz: number) => void;

export interface Hearing {
  readonly condition: Watched<EarCondition>;
  readonly quality: Watched<HearingQuality>;
  /** Root mean square, 0..1, ten times a second. */
  readonly level: Watched<number>;
  /** What the device really does to the sound; null before it was opened. */
  processing(): Processing | null;
  /** A copy of everything the ear gets. @returns stops it. */
  tap(listen: SoundTap): () => void;
  /** SHA-256 of the phrase model of a language once it is loaded, which begins now; null where it cannot be used. */
  modelOf(language: PhraseLanguage): Promise<string | null>;
  /** Opens the source for this listener; what listened before is let go. */
  listen(source: SoundSource, address: AddressWord, listener: HearingListener, language: PhraseLanguage): void;
  /** Tries the same source again now. */
  retry(): void;
  stop(): void;
  allow(commands: ReadonlySet<CommandId>): void;
  /** What the artist taught, from the next time that a source is opened; null for nothing. */
  hearWithOwnVoice(own: OwnVoice | null): void;
  /** How loud the artist is, in decibels of full scale: what is said from farther away is asked about. Null: not known. */
  hearArtistAt(speechDb: number | null): void;
  /** The companion begins to say this aloud, a sentence or a piece of one; null when it is silent again. */
  saying(text: string | null): void;
}

const tickMs = 500;
/** An ear that was late is called slow until it has kept up for so long. */
const slowForMs = 10_000;
const allWell: HearingQuality = { droppedMs: 0, behindMs: 0 };
const nobody: HearingListener = { heard: () => {}, talk: () => {}, lost: () => {}, back: () => {} };

/** @param ear makes the ear of a language, the first time that this language is spoken. */
export function createHearing(ear: (language: PhraseLanguage) => EarPort): Hearing {
  const condition = watchedValue<EarCondition>("off");
  const quality = watchedValue<HearingQuality>(allWell);
  const level = watchedValue(0);
  const taps = new Set<SoundTap>();
  let rateHz = 0;
  let processing: Processing | null = null;
  let slowUntilMs = Number.NEGATIVE_INFINITY;
  let state: ListeningState = startListening();
  let listener = nobody;
  let source: SoundSource | null = null;
  let run: EngineRun | null = null;
  let allowed: readonly CommandId[] = [];
  let spoken: PhraseLanguage = "en";
  let inTheAir: readonly PieceInTheAir[] = [];

  const showCondition = (): void => {
    const isSlow = performance.now() < slowUntilMs;
    if (!isSlow && quality.now.behindMs > 0) quality.set({ ...quality.now, behindMs: 0 });
    const now = conditionOf(state);
    const shown = now === "on" && isSlow ? "slow" : now;
    if (condition.now !== shown) condition.set(shown);
  };

  const toChart = (event: ListeningEvent): void => {
    const { next, orders } = decideListening(state, event);
    state = next;
    showCondition();
    for (const order of orders) carryOut(order);
  };

  const carryOut = (order: ListeningOrder): void => {
    if (order.type === "microphone.open") open();
    else if (order.type === "microphone.close") close();
    else if (order.type === "ear.lost") listener.lost(order.reason);
    else listener.back();
  };

  /** What the source says passes by here on its way to the engine. */
  const observe = (event: SoundEvent): void => {
    if (event.type === "level") level.set(event.rms);
    else if (event.type === "opened") {
      rateHz = event.rateHz;
      processing = event.processing;
      quality.set(allWell);
      slowUntilMs = Number.NEGATIVE_INFINITY;
      toChart({ type: "microphone.opened" });
    } else if (event.type === "dropped") quality.set({ ...quality.now, droppedMs: event.totalMs });
    else if (event.type === "refused") toChart({ type: "microphone.refused", reason: event.reason });
    else if (event.type === "lost") toChart({ type: "microphone.lost", reason: event.reason });
    if (event.type === "lost" || event.type === "closed") level.set(0);
  };
  const tapped: SoundSource = {
    open(track, listen) {
      if (!source) return { close: () => undefined };
      return source.open(track, (event) => {
        // Before the engine: it gives the samples away.
        if (event.type === "sound") for (const give of taps) give(event.samples.slice(), rateHz);
        // The chart learns of a loss before the run that ends with it: an end without a loss is the end of a recording.
        const isLoss = event.type === "lost" || event.type === "refused";
        if (isLoss) observe(event);
        listen(event);
        if (!isLoss) observe(event);
      });
    },
  };
  const engine = new LocalEngine({ source: tapped, ear, address: "station" });

  const take = (event: EngineEvent): void => {
    if (event.type === "heard") {
      if (event.heard.kind === "understood") toChart({ type: "phrase.understood" });
      if (event.heard.kind === "unsure") toChart({ type: "phrase.unsure", candidates: event.heard.candidates });
      listener.heard(event.heard);
    } else if (event.type === "speechstart") {
      toChart({ type: "sound.started" });
      listener.talk(true);
    } else if (event.type === "speechend") {
      toChart({ type: "sound.ended" });
      listener.talk(false);
    } else if (event.type === "behind") {
      slowUntilMs = performance.now() + slowForMs;
      quality.set({ ...quality.now, behindMs: event.behindMs });
      showCondition();
    } else if (event.type === "failed" && event.error === "service-not-allowed") {
      toChart({ type: "microphone.lost", reason: "recogniser" });
    } else if (event.type === "ended" && state.matches("listening")) {
      // A recording is over; a microphone that ends was lost before.
      toChart({ type: "listen.stop" });
    }
  };

  function open(): void {
    run?.abort();
    const opened: EngineRun = engine.open({ lang: spoken, continuous: true, track: null }, (event) => {
      if (run === opened) take(event);
    });
    run = opened;
    run.allow(allowed);
  }

  function close(): void {
    run?.abort();
    run = null;
    level.set(0);
  }

  let lastMs = performance.now();
  setInterval(() => {
    const nowMs = performance.now();
    toChart({ type: "time.witnessed", elapsedMs: nowMs - lastMs });
    lastMs = nowMs;
  }, tickMs);
  const isLost = () => condition.now === "none" || condition.now === "lost" || condition.now === "denied";
  onMicrophonesChanged(() => {
    if (isLost() && condition.now !== "denied") toChart({ type: "listen.start" });
  });
  onPermissionChanged((isGranted) => {
    if (isGranted && isLost()) toChart({ type: "listen.start" });
  });

  return {
    condition,
    quality,
    level,
    processing: () => processing,
    tap(give) {
      taps.add(give);
      return () => taps.delete(give);
    },
    modelOf: (language) => engine.modelOf(language),
    listen(next, address, told, language) {
      toChart({ type: "listen.stop" });
      spoken = language;
      inTheAir = [];
      source = next;
      listener = told;
      engine.address = address;
      toChart({ type: "listen.start" });
    },
    retry() {
      // A model that could not be fetched may be there by now; the microphone waits until that is known.
      engine.forgetUnusable(spoken);
      void engine.modelOf(spoken).then(() => toChart({ type: "listen.start" }));
    },
    stop() {
      toChart({ type: "listen.stop" });
      listener = nobody;
    },
    hearWithOwnVoice(own) {
      engine.hearWithOwnVoice(own);
    },
    hearArtistAt(speechDb) {
      engine.hearArtistAt(speechDb);
    },
    saying(text) {
      inTheAir = text === null ? [] : stillInTheAir(inTheAir, text, performance.now());
      const words = inTheAir.map((piece) => piece.text).join(" ");
      engine.tell({ type: "guard", commands: text === null ? null : sayingNow(words, spoken) });
    },
    allow(commands) {
      const next = [...commands];
      if (next.length === allowed.length && next.every((command, at) => command === allowed[at])) return;
      allowed = next;
      run?.allow(allowed);
    },
  };
}

/** How the ear is, as the screen says it. */
function conditionOf(state: ListeningState): EarCondition {
  if (state.matches("asleep")) return "off";
  if (state.matches("opening")) return "asking";
  if (state.matches("listening")) return "on";
  const { lostBecause } = state.context;
  if (lostBecause === "denied") return "denied";
  if (lostBecause === "recogniser") return "noModel";
  return lostBecause === "no-device" || lostBecause === "unsupported" ? "none" : "lost";
}
