/**
 * Phrase models made up in memory: the shipped one's description with layers of other widths, and weights drawn by chance.
 * They hear nothing, but run; for what must not depend on the sizes of the day.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { endOf, type Layer, type ModelFile, modelFile, type TensorPlace } from "../../src/recogniser/network/modelFile";
import { seededRandom } from "../../src/rehearsal/random";

export interface Sizes {
  /** Channels of the four groups of convolutions; the last is the embedding's size too. */
  readonly channels: readonly [number, number, number, number];
  readonly hidden: number;
  /** How matrices of weights are stored; all else is float32. */
  readonly weights: TensorPlace["dtype"];
}

export const wide: Sizes = { channels: [32, 64, 96, 128], hidden: 288, weights: "float16" };

const shipped = modelFile.parse(JSON.parse(readFileSync("public/voice/model.json", "utf8")));
const widths = [...new Set(shipped.layers.flatMap((layer) => (layer.kind === "conv2d" ? [layer.outChannels] : [])))];
const firstGru = shipped.layers.find((layer) => layer.kind === "gru");
const matrix = shipped.frontEnd.melMatrix;
const melBytes = readFileSync("public/voice/model.bin").subarray(matrix.byteOffset, endOf(matrix));

/** @returns the texts and bytes that `loadModel` takes. */
export function madeModel({ channels, hidden, weights }: Sizes) {
  const random = seededRandom(29);
  const parts: Uint8Array[] = [];
  let size = 0;
  const place = (bytes: Uint8Array, shape: readonly number[], dtype: TensorPlace["dtype"]): TensorPlace => {
    const byteOffset = size;
    parts.push(bytes, new Uint8Array(-bytes.length & 3));
    size += bytes.length + (-bytes.length & 3);
    return { byteOffset, shape: [...shape], dtype };
  };
  const floats = (numbers: readonly number[]) => {
    const view = new DataView(new ArrayBuffer(4 * numbers.length));
    for (const [n, x] of numbers.entries()) view.setFloat32(4 * n, x, true);
    return new Uint8Array(view.buffer);
  };
  const vector = (length: number, middle: number, width: number) =>
    place(floats(Array.from({ length }, () => middle + width * (random() - 0.5))), [length], "float32");
  /** Between `2 ** exponent` and twice that, of either sign: bits that are the same number in both precisions. */
  const drawn = (exponent: number) => {
    const [fraction, isBelow] = [Math.floor(1024 * random()), random() < 0.5];
    const half = (isBelow ? 0x8000 : 0) | ((exponent + 15) << 10) | fraction;
    return { half, value: (isBelow ? -1 : 1) * (1 + fraction / 1024) * 2 ** exponent };
  };
  /** Of a size that hands on about as much as comes in. */
  const rows = (shape: readonly number[], gain: number) => {
    const inputs = shape.slice(1).reduce((a, b) => a * b, 1);
    const usual = Math.log2(gain / Math.sqrt(inputs) / 1.5);
    const all = Array.from({ length: inputs * (shape[0] ?? 0) }, () => drawn(Math.floor(usual + random())));
    if (weights === "float32") return place(floats(all.map(({ value }) => value)), shape, weights);
    const view = new DataView(new ArrayBuffer(2 * all.length));
    for (const [n, { half }] of all.entries()) view.setUint16(2 * n, half, true);
    return place(new Uint8Array(view.buffer), shape, weights);
  };
  const widthFor = (old: number) => channels[widths.indexOf(old)] ?? old;
  const made = (layer: Layer): Layer => {
    if (layer.kind === "conv2d") {
      const [inChannels, outChannels] = [widthFor(layer.inChannels), widthFor(layer.outChannels)];
      const weight = rows([outChannels, inChannels, ...layer.kernel], 1.3);
      return { ...layer, inChannels, outChannels, weight, bias: layer.bias && vector(outChannels, 0, 0.2) };
    }
    const embedding = channels[3];
    if (layer.kind === "affine")
      return { ...layer, scale: vector(embedding, 0.2, 0.2), shift: vector(embedding, 0, 1) };
    if (layer.kind === "gru") {
      const inputs = layer === firstGru ? embedding : hidden;
      const [weightInput, weightHidden] = [rows([3 * hidden, inputs], 2), rows([3 * hidden, hidden], 2)];
      const [biasInput, biasHidden] = [vector(3 * hidden, 0, 0.5), vector(3 * hidden, 0, 0.5)];
      return { ...layer, inputs, hidden, weightInput, weightHidden, biasInput, biasHidden };
    }
    if (layer.kind !== "dense") return layer;
    return { ...layer, inputs: hidden, weight: rows([layer.outputs, hidden], 4), bias: vector(layer.outputs, 0, 1) };
  };
  const melMatrix = place(melBytes, matrix.shape, "float32");
  const layers = shipped.layers.map(made);
  const binary = new Uint8Array(Buffer.concat(parts));
  const sha256 = createHash("sha256").update(binary).digest("hex");
  const file: ModelFile = {
    ...shipped,
    trained: false,
    note: "made up: hears nothing",
    binary: { file: "model.bin", bytes: binary.length, sha256 },
    frontEnd: { ...shipped.frontEnd, melMatrix },
    stream: { ...shipped.stream, embeddingSize: channels[3] },
    layers,
  };
  return { description: `${JSON.stringify(file, null, 1)}\n`, binary };
}
