/**
 * The small objects of the Web Speech API: alternatives, results, phrases, and the events that carry them.
 * @see Web Speech API, Draft Community Group Report (WebAudio/web-speech-api)
 */

export type SpeechRecognitionErrorCode =
  | "no-speech"
  | "aborted"
  | "audio-capture"
  | "network"
  | "not-allowed"
  | "service-not-allowed"
  | "language-not-supported"
  | "phrases-not-supported";

export type AvailabilityStatus = "unavailable" | "downloadable" | "downloading" | "available";

/** What may have been said, and how sure the recogniser is, 0..1. */
export class SpeechRecognitionAlternative {
  readonly transcript: string;
  readonly confidence: number;
  constructor(transcript: string, confidence: number) {
    this.transcript = transcript;
    this.confidence = confidence;
  }
}

/** Reads by index like an array, and by `item`, which gives null past the end. */
class ListOf<T> {
  readonly [index: number]: T;
  readonly length: number;
  constructor(items: readonly T[]) {
    this.length = items.length;
    for (const [index, item] of items.entries()) Object.defineProperty(this, index, { value: item, enumerable: true });
  }
  item(index: number): T | null {
    return this[index] ?? null;
  }
  *[Symbol.iterator](): IterableIterator<T> {
    for (let index = 0; index < this.length; index++) yield this[index] as T;
  }
}

/** Alternatives for one utterance, the likeliest first. */
export class SpeechRecognitionResult extends ListOf<SpeechRecognitionAlternative> {
  readonly isFinal: boolean;
  constructor(alternatives: readonly SpeechRecognitionAlternative[], isFinal: boolean) {
    super([...alternatives].sort((a, b) => b.confidence - a.confidence));
    this.isFinal = isFinal;
  }
}

/** Everything recognised since `start`: finals, never changed again, then interims. */
export class SpeechRecognitionResultList extends ListOf<SpeechRecognitionResult> {}

export interface SpeechRecognitionEventInit extends EventInit {
  readonly resultIndex?: number;
  readonly results: SpeechRecognitionResultList;
}

/** `result` and `nomatch`: all results so far, and the lowest index that changed. */
export class SpeechRecognitionEvent extends Event {
  readonly resultIndex: number;
  readonly results: SpeechRecognitionResultList;
  constructor(type: string, init: SpeechRecognitionEventInit) {
    super(type, init);
    this.resultIndex = init.resultIndex ?? 0;
    this.results = init.results;
  }
}

export interface SpeechRecognitionErrorEventInit extends EventInit {
  readonly error: SpeechRecognitionErrorCode;
  readonly message?: string;
}

export class SpeechRecognitionErrorEvent extends Event {
  readonly error: SpeechRecognitionErrorCode;
  readonly message: string;
  constructor(type: string, init: SpeechRecognitionErrorEventInit) {
    super(type, init);
    this.error = init.error;
    this.message = init.message ?? "";
  }
}
