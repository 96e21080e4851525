/**
 * The order that the Web Speech API promises, whatever the engine does: audio starts before anything in it, sound and
 * speech end only after they started, and what is open is closed before the end.
 */
export type StreamEvent = "audiostart" | "soundstart" | "speechstart" | "speechend" | "soundend" | "audioend";

const opening: Readonly<Record<string, StreamEvent>> = {
  speechend: "speechstart",
  soundend: "soundstart",
  audioend: "audiostart",
};
const insideFirst = ["speech", "sound", "audio"] as const;

export class EventOrder {
  readonly #open = new Set<StreamEvent>();
  #hadAudio = false;

  /** The events to fire for one that the engine reports: none if it makes no sense now, more if something was missing. */
  of(event: StreamEvent): readonly StreamEvent[] {
    const begun = opening[event];
    if (begun !== undefined) return this.#open.delete(begun) ? [event] : [];
    if (this.#open.has(event)) return [];
    const before = event === "audiostart" ? [] : this.needAudio();
    this.#open.add(event);
    this.#hadAudio = true;
    return [...before, event];
  }

  /** Audio must have started before a result or a nomatch. */
  needAudio(): readonly StreamEvent[] {
    return this.#hadAudio ? [] : this.of("audiostart");
  }

  /** Closes what is open, the innermost first. */
  closeAll(): readonly StreamEvent[] {
    return insideFirst.flatMap((what) => this.of(`${what}end`));
  }
}
