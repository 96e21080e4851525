/** The model's list of convolutions and pools as stages of a stream. */
import { melCount } from "../frontEnd/melFrames";
import { acrossBoth, alongPitch, alongTime, pool, type Stage } from "./convolutions";
import type { PhraseModel } from "./loadModel";
import type { LayerOf } from "./modelFile";
import type { Workshop } from "./product";
import { convolutionWeightsOf } from "./weightsOf";

export function convolutionsOf(shop: Workshop, model: PhraseModel): readonly Stage[] {
  const stages: Stage[] = [];
  for (const layer of model.file.layers) {
    const positions = stages.at(-1)?.positions ?? melCount;
    const channels = stages.at(-1)?.channels ?? 1;
    if (layer.kind === "conv2d") stages.push(convolutionOf(shop, model, layer, positions, channels));
    if (layer.kind === "maxPool") stages.push(pool(shop, positions, channels, layer.kernel[0] === 2));
  }
  return stages;
}

function convolutionOf(
  shop: Workshop,
  model: PhraseModel,
  layer: LayerOf<"conv2d">,
  positions: number,
  channels: number,
): Stage {
  const weights = convolutionWeightsOf(shop, model, layer);
  const shape = layer.kernel.join("×");
  if (shape === "3×3" && channels === 1) return acrossBoth(shop, positions, weights);
  if (shape === "1×3") return alongPitch(shop, positions, channels, weights);
  if (shape === "3×1") return alongTime(shop, positions, channels, weights, layer.activation === null);
  throw new RangeError(`no stage for a ${shape} convolution of ${channels} channels`);
}
