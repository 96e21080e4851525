/** A source that also tells someone else what it says: the screen's level, the chart of listening. */
import type { SoundEvent, SoundSource } from "./vocabulary";

/** `watch` hears every event before the one who opened the source does; it must not change the samples. */
export function observed(source: SoundSource, watch: (event: SoundEvent) => void): SoundSource {
  return {
    open: (track, listen) =>
      source.open(track, (event) => {
        watch(event);
        listen(event);
      }),
  };
}
