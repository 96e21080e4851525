/**
 * The phrase model's description, `model.json` (phrase-model/1, audio/make/MODEL.md): where each tensor lies in
 * `model.bin`, the layers in order, what the outputs mean and the thresholds. Numbers this program relies on are
 * literals here, so that a model made otherwise is refused and not misheard.
 */
import { z } from "zod";
import { phraseLanguages } from "../../intent/wording";

const tensor = z.strictObject({
  byteOffset: z.int().nonnegative().multipleOf(4),
  shape: z.array(z.int().positive()).min(1).max(4),
  /** What matrices of weights are stored in; a program from before there were halves refuses them. */
  dtype: z.enum(["float32", "float16"]),
});
export type TensorPlace = z.infer<typeof tensor>;

const bytesOf = { float32: 4, float16: 2 };
export const countOf = ({ shape }: TensorPlace): number => shape.reduce((a, b) => a * b, 1);
/** Where the tensor ends; the next one begins there or, after halves of an odd number, two bytes later. */
export const endOf = (place: TensorPlace): number => place.byteOffset + bytesOf[place.dtype] * countOf(place);

const size = z.int().positive();
const pair = z.tuple([size, size]);
const rectifier = z.strictObject({ kind: z.literal("leakyThenFloor"), slope: z.literal(0.2), floor: z.literal(-0.4) });

const layer = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("conv2d"),
    kernel: pair,
    stride: z.tuple([z.literal(1), z.literal(1)]),
    padFrequency: z.int().min(0).max(1),
    inChannels: size,
    outChannels: size,
    activation: rectifier.nullable(),
    weight: tensor,
    bias: tensor.nullable(),
  }),
  z.strictObject({ kind: z.literal("maxPool"), kernel: pair, stride: pair }),
  z.strictObject({ kind: z.literal("affine"), scale: tensor, shift: tensor }),
  z.strictObject({
    kind: z.literal("gru"),
    inputs: size,
    hidden: size,
    gates: z.tuple([z.literal("reset"), z.literal("update"), z.literal("new")]),
    weightInput: tensor,
    weightHidden: tensor,
    biasInput: tensor,
    biasHidden: tensor,
  }),
  z.strictObject({ kind: z.literal("dense"), inputs: size, outputs: size, weight: tensor, bias: tensor }),
]);
export type Layer = z.infer<typeof layer>;
export type LayerOf<K extends Layer["kind"]> = Extract<Layer, { kind: K }>;

export const modelFile = z.strictObject({
  format: z.literal("phrase-model/1"),
  trained: z.boolean(),
  note: z.string(),
  binary: z.strictObject({ file: z.string(), bytes: size, sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
  audio: z.strictObject({
    sampleRateHz: z.literal(16_000),
    channels: z.literal(1),
    sampleScale: z.literal("int16"),
  }),
  frontEnd: z.strictObject({
    fftSize: z.literal(512),
    window: z.literal("hannPeriodic"),
    windowLength: z.literal(400),
    windowOffset: z.literal(56),
    frameHopSamples: z.literal(160),
    melBands: z.literal(32),
    powerFloor: z.literal(1),
    logOffset: z.literal(2),
    melMatrix: tensor,
  }),
  stream: z.strictObject({
    hopSamples: z.literal(1280),
    framesPerHop: z.literal(8),
    samplesForFirstHop: z.literal(1632),
    skipFrames: z.literal(4),
    receptiveFrames: z.literal(76),
    embeddingSize: size,
    windowEmbeddings: size,
  }),
  layers: z.array(layer).min(1),
  outputs: z.strictObject({
    none: z.literal(0),
    firstAddress: z.literal(1),
    firstCommand: size,
    addressWords: z.array(z.string()).min(1),
    commandIds: z.array(z.string()).min(1),
    commandWords: z.record(z.string(), z.string()),
    /** Left out in models made before there was more than English. */
    language: z.enum(phraseLanguages).default("en"),
  }),
  decision: z.looseObject({
    smoothingHops: z.int().min(1).max(20),
    refractoryHops: z.int().min(1).max(100),
    thresholds: z.record(z.string(), z.number().positive().max(1)),
  }),
});
export type ModelFile = z.infer<typeof modelFile>;
