/**
 * The results of one session as the draft keeps them: finals, which never change, then at most one interim, which the next
 * result overwrites or removes. `resultIndex` is the lowest place that changed.
 */
import { SpeechRecognitionEvent, type SpeechRecognitionResult, SpeechRecognitionResultList } from "./vocabulary";

export class SessionResults {
  #finals: readonly SpeechRecognitionResult[] = [];
  #interim: SpeechRecognitionResult | null = null;

  /** How many finals there are; also the place of the next result. */
  get count(): number {
    return this.#finals.length;
  }

  /** The same place will not be returned again. */
  addFinal(result: SpeechRecognitionResult): SpeechRecognitionEvent {
    const resultIndex = this.count;
    this.#interim = null;
    this.#finals = [...this.#finals, result];
    return this.#event(resultIndex);
  }

  /** @param result null where it came to nothing. @returns null where nothing changed. */
  changeInterim(result: SpeechRecognitionResult | null): SpeechRecognitionEvent | null {
    if (result === null && this.#interim === null) return null;
    this.#interim = result;
    return this.#event(this.count);
  }

  #event(resultIndex: number): SpeechRecognitionEvent {
    const all = this.#interim === null ? this.#finals : [...this.#finals, this.#interim];
    return new SpeechRecognitionEvent("result", { resultIndex, results: new SpeechRecognitionResultList(all) });
  }
}
