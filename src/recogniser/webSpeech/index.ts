/** The Web Speech API on an engine of our own, and its installation where the browser has none. */
import type { Engine } from "./engine";
import { SpeechRecognitionPhrase, SpeechRecognitionPhraseList } from "./phrases";
import { speechRecognitionOn } from "./speechRecognition";
import {
  SpeechRecognitionAlternative,
  SpeechRecognitionErrorEvent,
  SpeechRecognitionEvent,
  SpeechRecognitionResult,
  SpeechRecognitionResultList,
} from "./vocabulary";

export type { Engine, EngineEvent, EngineOptions, EngineRun } from "./engine";
export * from "./phrases";
export { type SpeechRecognitionOptions, speechRecognitionOn } from "./speechRecognition";
export * from "./vocabulary";
export type OurSpeechRecognition = InstanceType<ReturnType<typeof speechRecognitionOn>>;

/**
 * Gives `target` (usually `globalThis`) the interfaces of the Web Speech API, unless it has a SpeechRecognition already.
 * @returns true if ours was put in place.
 */
export function polyfillSpeechRecognition(target: object, engine: Engine): boolean {
  if ("SpeechRecognition" in target) return false;
  const interfaces = {
    SpeechRecognition: speechRecognitionOn(engine),
    SpeechRecognitionAlternative,
    SpeechRecognitionErrorEvent,
    SpeechRecognitionEvent,
    SpeechRecognitionPhrase,
    SpeechRecognitionPhraseList,
    SpeechRecognitionResult,
    SpeechRecognitionResultList,
  };
  for (const [name, value] of Object.entries(interfaces)) {
    Object.defineProperty(target, name, { value, configurable: true, writable: true });
  }
  return true;
}
