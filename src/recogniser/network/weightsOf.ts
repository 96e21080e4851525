/** Tensors of the model file, laid out in a workshop the way `product` reads them. */
import type { PhraseModel } from "./loadModel";
import type { LayerOf, TensorPlace } from "./modelFile";
import type { Weights, Workshop } from "./product";

const onlyLayer = <K extends "affine" | "dense">(model: PhraseModel, kind: K): LayerOf<K> => {
  const found = model.file.layers.find((layer): layer is LayerOf<K> => layer.kind === kind);
  if (found === undefined) throw new RangeError(`the phrase model has no ${kind} layer`);
  return found;
};

const rowsOf = (shop: Workshop, model: PhraseModel, weight: TensorPlace, bias: TensorPlace): Weights => {
  const [outputs = 0, inputs = 0] = weight.shape;
  return shop.weights(outputs, inputs, model.numbers(weight), model.numbers(bias));
};

/** [out, in, time, pitch] becomes out × (time · pitch · in): a window's channels lie together. */
export function convolutionWeightsOf(shop: Workshop, model: PhraseModel, layer: LayerOf<"conv2d">): Weights {
  const { inChannels, outChannels, kernel, weight, bias } = layer;
  const taps = kernel[0] * kernel[1];
  const given = model.numbers(weight);
  const turned = new Float32Array(given.length);
  for (let o = 0; o < outChannels; o++) {
    for (let i = 0; i < inChannels; i++) {
      for (let t = 0; t < taps; t++) {
        turned[(o * taps + t) * inChannels + i] = given[(o * inChannels + i) * taps + t] as number;
      }
    }
  }
  return shop.weights(outChannels, taps * inChannels, turned, bias === null ? null : model.numbers(bias));
}

export const gruWeightsOf = (
  shop: Workshop,
  model: PhraseModel,
  layer: LayerOf<"gru">,
): readonly [Weights, Weights] => [
  rowsOf(shop, model, layer.weightInput, layer.biasInput),
  rowsOf(shop, model, layer.weightHidden, layer.biasHidden),
];

export function denseOf(shop: Workshop, model: PhraseModel): Weights {
  const { weight, bias } = onlyLayer(model, "dense");
  return rowsOf(shop, model, weight, bias);
}

/** The last layer: from what the recurrent layers made of the last two seconds to one number for each output. */
export interface Head {
  /** outputs × inputs, row after row. */
  readonly weights: Float32Array;
  readonly bias: Float32Array;
}

/** The head that the model came with. */
export function headOf(model: PhraseModel): Head {
  const { weight, bias } = onlyLayer(model, "dense");
  return { weights: model.numbers(weight), bias: model.numbers(bias) };
}

export function affineOf(model: PhraseModel): { readonly scale: Float32Array; readonly shift: Float32Array } {
  const { scale, shift } = onlyLayer(model, "affine");
  return { scale: model.numbers(scale), shift: model.numbers(shift) };
}
