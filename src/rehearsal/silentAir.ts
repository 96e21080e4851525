/** A room without sound: phrases last as long as they would, and nobody is heard to talk. */
import { type Air, phraseMs } from "./act";

const rateHz = 8_000;

export const silentAir = (): Air => ({
  rateHz,
  say: (command) => phraseMs(command),
  take: (count) => new Float32Array(count),
});
