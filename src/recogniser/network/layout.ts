/** Whether the layers of a model description fit together and into its binary. */
import { endOf, type Layer, type ModelFile, type TensorPlace } from "./modelFile";

const shaped = (place: TensorPlace, ...shape: readonly number[]) => place.shape.join() === shape.join();

function tensorsOf(layer: Layer): readonly TensorPlace[] {
  if (layer.kind === "conv2d") return layer.bias === null ? [layer.weight] : [layer.weight, layer.bias];
  if (layer.kind === "affine") return [layer.scale, layer.shift];
  if (layer.kind === "gru") return [layer.weightInput, layer.weightHidden, layer.biasInput, layer.biasHidden];
  return layer.kind === "dense" ? [layer.weight, layer.bias] : [];
}

export const tensorsIn = ({ frontEnd, layers }: ModelFile): readonly TensorPlace[] => [
  frontEnd.melMatrix,
  ...layers.flatMap(tensorsOf),
];

/** One layer: the shapes of its tensors follow from its sizes, and it is of a kind that can be computed here. */
function fits(layer: Layer): boolean {
  if (layer.kind === "conv2d") {
    const { kernel, inChannels, outChannels, weight, bias, padFrequency } = layer;
    const known = kernel.join() === "1,3" || kernel.join() === "3,1" || (kernel.join() === "3,3" && inChannels === 1);
    const isPadded = padFrequency === (kernel[1] === 3 ? 1 : 0);
    const hasBias = bias === null || shaped(bias, outChannels);
    return known && isPadded && hasBias && outChannels % 8 === 0 && shaped(weight, outChannels, inChannels, ...kernel);
  }
  if (layer.kind === "maxPool")
    return layer.kernel.join() === layer.stride.join() && /^[12],2$/.test(layer.kernel.join());
  if (layer.kind === "affine") return layer.scale.shape.join() === layer.shift.shape.join();
  if (layer.kind === "gru") {
    const { inputs, hidden, weightInput, weightHidden, biasInput, biasHidden } = layer;
    const gates = 3 * hidden;
    const haveBiases = shaped(biasInput, gates) && shaped(biasHidden, gates);
    return haveBiases && shaped(weightInput, gates, inputs) && shaped(weightHidden, gates, hidden) && hidden % 8 === 0;
  }
  return shaped(layer.weight, layer.outputs, layer.inputs) && shaped(layer.bias, layer.outputs);
}

/** Channels in and channels out, where a layer has a say in them. */
function widths(layer: Layer): readonly [number, number] | null {
  if (layer.kind === "conv2d") return [layer.inChannels, layer.outChannels];
  if (layer.kind === "gru") return [layer.inputs, layer.hidden];
  if (layer.kind === "dense") return [layer.inputs, layer.outputs];
  return layer.kind === "affine" ? [layer.scale.shape[0] ?? 0, layer.scale.shape[0] ?? 0] : null;
}

const orderOfKinds = /^(conv2d |maxPool )+affine (gru )+dense $/;

export function isWellLaidOut(file: ModelFile): boolean {
  const { layers, binary, frontEnd, outputs, stream } = file;
  const places = tensorsIn(file).toSorted((a, b) => a.byteOffset - b.byteOffset);
  const areApart = places.every((place, n) => endOf(place) <= (places[n + 1]?.byteOffset ?? binary.bytes));
  const chain = layers.map(widths).filter((w) => w !== null);
  const isChained = chain.every(([inputs], n) => inputs === (n === 0 ? 1 : chain[n - 1]?.[1]));
  const isOrdered = orderOfKinds.test(layers.map((layer) => `${layer.kind} `).join(""));
  const isWhole = chain.at(-1)?.[1] === outputs.firstCommand + outputs.commandIds.length;
  const affine = layers.find((layer) => layer.kind === "affine");
  const isEmbedding = affine?.scale.shape[0] === stream.embeddingSize;
  return (
    areApart &&
    isOrdered &&
    isChained &&
    isWhole &&
    isEmbedding &&
    layers.every(fits) &&
    shaped(frontEnd.melMatrix, 257, 32)
  );
}
