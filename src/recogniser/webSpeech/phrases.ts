/** Phrases that a page expects, with how much likelier it thinks them. Ours is a closed set, so only the shape is here. */

/** `boost` is about the natural logarithm of how many times likelier: 0 is not at all, 10 is extremely. */
export class SpeechRecognitionPhrase {
  readonly phrase: string;
  readonly boost: number;
  constructor(phrase: string, boost = 1) {
    const value = Math.fround(boost);
    if (!Number.isFinite(value)) throw new TypeError("boost must be a number");
    if (value < 0 || value > 10) throw new DOMException("boost must be from 0 to 10", "SyntaxError");
    this.phrase = String(phrase);
    this.boost = value;
  }
}

export class SpeechRecognitionPhraseList {
  readonly #phrases: SpeechRecognitionPhrase[];
  constructor(phrases: Iterable<SpeechRecognitionPhrase>) {
    this.#phrases = [...phrases];
  }
  get length(): number {
    return this.#phrases.length;
  }
  item(index: number): SpeechRecognitionPhrase {
    const phrase = this.#phrases[index];
    if (phrase === undefined) throw new RangeError(`there is no phrase ${index}`);
    return phrase;
  }
  addItem(item: SpeechRecognitionPhrase): void {
    this.#phrases.push(item);
  }
  removeItem(index: number): void {
    this.item(index);
    this.#phrases.splice(index, 1);
  }
}
