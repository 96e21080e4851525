/**
 * The phrase model as a stream: 80 ms of sound in, the probability of every command behind every address word out.
 *
 *   sound ─▶ mel frames ─▶ convolutions ─▶ one embedding ─▶ two recurrent layers over the last 26 ─▶ outputs
 */
import { MelFrames, melCount, rowsPerStep, spanSamples } from "../frontEnd/melFrames";
import { type Stage, through } from "./convolutions";
import { convolutionsOf } from "./convolutionsOf";
import { floatsForEachUnit, GruLayer } from "./gru";
import { tensorsIn } from "./layout";
import type { PhraseModel } from "./loadModel";
import { countOf, type ModelFile } from "./modelFile";
import { fillWeights, type Weights, Workshop } from "./product";
import { affineOf, denseOf, gruWeightsOf, type Head, headOf } from "./weightsOf";

/** Rows passed over at the start of a stream, so that embeddings fall on the ends of steps. */
const skippedRows = 4;
/** Bytes for the rows that convolutions hold, and for rounding up. Some 120 kB are used, 160 kB by layers a third wider. */
const roomForRows = 1_000_000;

/** Bytes of the net's workshop: every weight as a float32, however it is stored, and what the windows hold in each layer. */
function roomOf(file: ModelFile): number {
  const weights = tensorsIn(file).reduce((sum, place) => sum + countOf(place), 0);
  const hidden = file.layers.reduce((sum, layer) => sum + (layer.kind === "gru" ? layer.hidden : 0), 0);
  return 4 * (weights + floatsForEachUnit * file.stream.windowEmbeddings * hidden) + roomForRows;
}

/** Where in a stream a net is: what its stages have counted and the rows and states in its workshop. */
interface Place {
  readonly seen: readonly number[];
  readonly rows: number;
  readonly embeddings: number;
  readonly memory: Uint8Array;
}

export class PhraseNet {
  readonly commandCount: number;
  readonly #mel: MelFrames;
  readonly #rows = new Float32Array(rowsPerStep * melCount);
  readonly #shop: Workshop;
  readonly #convolutions: readonly Stage[];
  readonly #affine: { readonly scale: Float32Array; readonly shift: Float32Array };
  readonly #embedding: Float32Array;
  readonly #scaled: Float32Array;
  readonly #layers: readonly GruLayer[];
  readonly #dense: Weights;
  readonly #usualHead: Head;
  readonly #summary: Float32Array;
  readonly #logits: Float32Array;
  readonly #windows: number;
  readonly #addressCount: number;
  readonly #fresh: Place;
  #silent: Place | null = null;
  #rowsSeen = 0;
  #embeddingsSeen = 0;

  /** @param plain Plain JavaScript even where WebAssembly is to be had; for checking. */
  constructor(model: PhraseModel, plain = false) {
    const { layers, frontEnd, stream, outputs } = model.file;
    this.#shop = new Workshop(roomOf(model.file), plain);
    this.#windows = stream.windowEmbeddings;
    this.#mel = new MelFrames(model.numbers(frontEnd.melMatrix));
    this.#convolutions = convolutionsOf(this.#shop, model);
    this.#affine = affineOf(model);
    this.#embedding = new Float32Array(stream.embeddingSize);
    this.#scaled = this.#shop.floats(stream.embeddingSize);
    this.#layers = layers
      .filter((layer) => layer.kind === "gru")
      .map((layer) => new GruLayer(this.#shop, this.#windows, ...gruWeightsOf(this.#shop, model, layer)));
    this.#dense = denseOf(this.#shop, model);
    this.#usualHead = headOf(model);
    this.#summary = new Float32Array(this.#dense.inputs);
    this.#logits = this.#shop.floats(this.#dense.outputs);
    this.#addressCount = outputs.addressWords.length;
    this.commandCount = outputs.commandIds.length;
    this.#fresh = this.#place();
  }

  /** Whether its sums run in WebAssembly. */
  get isFast(): boolean {
    return this.#shop.isFast;
  }
  /** The last embedding, before the recurrent layers. For checking. */
  get embedding(): Float32Array {
    return this.#embedding;
  }
  /** What the recurrent layers made of the last 26 embeddings: what the head decides on. */
  get summary(): Float32Array {
    return this.#summary;
  }
  /** From now on another head decides, such as one that knows this artist's voice; null for the model's own. */
  decideWith(head: Head | null): void {
    const { weights, bias } = head ?? this.#usualHead;
    fillWeights(this.#dense, bias.length, weights, bias);
  }
  get embeddingsSeen(): number {
    return this.#embeddingsSeen;
  }

  /** Forgets all sound: the next step is the first of a stream. */
  reset(): void {
    this.#goTo(this.#fresh);
  }

  /** As if it had heard silence, long enough to answer at the next step. The silence is really heard only the first time. */
  hearSilence(): void {
    if (this.#silent === null) {
      this.reset();
      const silence = new Float32Array(spanSamples);
      while (!this.step(silence, 0));
      this.#silent = this.#place();
    }
    this.#goTo(this.#silent);
  }

  #place(): Place {
    const seen = this.#convolutions.map((stage) => stage.seen);
    return { seen, rows: this.#rowsSeen, embeddings: this.#embeddingsSeen, memory: this.#shop.keep() };
  }

  #goTo({ seen, rows, embeddings, memory }: Place): void {
    for (const [n, stage] of this.#convolutions.entries()) stage.seen = seen[n] ?? 0;
    this.#rowsSeen = rows;
    this.#embeddingsSeen = embeddings;
    this.#shop.restore(memory);
  }

  /**
   * Takes the step whose samples start at `from` (it reads `spanSamples` from there).
   * @returns true when 26 embeddings have been seen and `probabilities` may be asked.
   */
  step(samples: Float32Array, from: number): boolean {
    this.#mel.step(samples, from, this.#rows);
    let embedding: Float32Array | null = null;
    for (let row = 0; row < rowsPerStep; row++) {
      if (this.#rowsSeen++ < skippedRows) continue;
      embedding = through(this.#convolutions, this.#rows.subarray(row * melCount, (row + 1) * melCount)) ?? embedding;
    }
    if (embedding === null) return false;
    this.#embedding.set(embedding);
    this.#recur(embedding);
    return this.#embeddingsSeen >= this.#windows;
  }

  /**
   * Writes the probability of each command, in the model's order, spoken to one address word.
   * P(a, c) = exp(A + C) / (exp(N) + Σ exp(A) · Σ exp(C)): what is missing to 1 is "none of these".
   */
  probabilities(address: number, out: Float64Array): void {
    const top = this.#logits.subarray(0, 1 + this.#addressCount + this.commandCount);
    const addresses = top.subarray(1, 1 + this.#addressCount);
    const commands = top.subarray(1 + this.#addressCount);
    const bestAddress = addresses.reduce((a, b) => Math.max(a, b));
    const bestCommand = commands.reduce((a, b) => Math.max(a, b));
    const peak = Math.max(top[0] as number, bestAddress + bestCommand);
    const addressSum = addresses.reduce((sum, a) => sum + Math.exp(a - bestAddress), 0);
    const commandSum = commands.reduce((sum, c) => sum + Math.exp(c - bestCommand), 0);
    const all =
      Math.exp((top[0] as number) - peak) + addressSum * commandSum * Math.exp(bestAddress + bestCommand - peak);
    for (let c = 0; c < this.commandCount; c++) {
      out[c] = Math.exp((addresses[address] as number) + (commands[c] as number) - peak) / all;
    }
  }

  /** One window begins at each embedding and the one that began 26 ago, this one included, is complete. */
  #recur(embedding: Float32Array): void {
    const { scale, shift } = this.#affine;
    for (let i = 0; i < embedding.length; i++) {
      this.#scaled[i] = (embedding[i] as number) * (scale[i] as number) + (shift[i] as number);
    }
    const begins = this.#embeddingsSeen++ % this.#windows;
    let below: GruLayer | null = null;
    for (const layer of this.#layers) {
      layer.begin(begins);
      if (below === null) layer.takeShared(this.#scaled);
      else layer.takeEach(below.states);
      below = layer;
    }
    const complete = this.#embeddingsSeen % this.#windows;
    if (below === null) return;
    this.#summary.set(below.states.subarray(complete * below.hidden, (complete + 1) * below.hidden));
    this.#shop.product(below.states.subarray(complete * below.hidden), 0, 1, this.#dense, this.#logits);
  }
}
