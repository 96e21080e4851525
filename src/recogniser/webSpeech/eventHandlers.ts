/** The `on…` attributes of SpeechRecognition: one handler each, called in its turn among the listeners, as in HTML. */
import type { SpeechRecognitionErrorEvent, SpeechRecognitionEvent } from "./vocabulary";

export interface SpeechRecognitionEventMap {
  readonly audiostart: Event;
  readonly soundstart: Event;
  readonly speechstart: Event;
  readonly speechend: Event;
  readonly soundend: Event;
  readonly audioend: Event;
  readonly result: SpeechRecognitionEvent;
  readonly nomatch: SpeechRecognitionEvent;
  readonly error: SpeechRecognitionErrorEvent;
  readonly start: Event;
  readonly end: Event;
}
type EventType = keyof SpeechRecognitionEventMap;
type Handler<T extends EventType> = ((event: SpeechRecognitionEventMap[T]) => void) | null;

export class EventHandlers extends EventTarget {
  declare onaudiostart: Handler<"audiostart">;
  declare onsoundstart: Handler<"soundstart">;
  declare onspeechstart: Handler<"speechstart">;
  declare onspeechend: Handler<"speechend">;
  declare onsoundend: Handler<"soundend">;
  declare onaudioend: Handler<"audioend">;
  declare onresult: Handler<"result">;
  declare onnomatch: Handler<"nomatch">;
  declare onerror: Handler<"error">;
  declare onstart: Handler<"start">;
  declare onend: Handler<"end">;
  readonly #handlers = new Map<string, (event: Event) => void>();

  /** Dispatches; a listener that throws does not stop the others. */
  protected fire(event: Event): void {
    this.dispatchEvent(event);
  }

  static {
    const types = ["audiostart", "soundstart", "speechstart", "speechend", "soundend", "audioend"] as const;
    for (const type of [...types, "result", "nomatch", "error", "start", "end"] as const) {
      Object.defineProperty(EventHandlers.prototype, `on${type}`, {
        configurable: true,
        enumerable: true,
        get(this: EventHandlers) {
          return this.#handlers.get(type) ?? null;
        },
        set(this: EventHandlers, handler: unknown) {
          this.#set(type, handler);
        },
      });
    }
  }

  #set(type: string, handler: unknown): void {
    const had = this.#handlers.has(type);
    if (typeof handler !== "function") {
      this.#handlers.delete(type);
      return;
    }
    this.#handlers.set(type, handler as (event: Event) => void);
    if (!had && !this.#listening.has(type)) {
      this.#listening.add(type);
      this.addEventListener(type, (event) => this.#handlers.get(type)?.call(this, event));
    }
  }
  readonly #listening = new Set<string>();
}
