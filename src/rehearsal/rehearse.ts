/** A recorded session through the real ear, chart, announcements and log. The sound is the clock. */
import type { ClipManifest } from "../announcements/clips";
import type { SealedRecord } from "../export";
import type { CommandId } from "../intent/phrases";
import { Ear, type PhraseModel, type Sound } from "../recogniser";
import { SoundActivity } from "../recogniser/soundActivity";
import { type Figures, figuresOf } from "./figures";
import type { Opened } from "./opening";
import { enterRoom } from "./room";
import type { StoryLine } from "./story";

/** One step of the recogniser. */
const chunkMs = 80;

export interface Rehearsal {
  readonly sealed: SealedRecord;
  readonly story: readonly StoryLine[];
  readonly figures: Figures;
  readonly soundMs: number;
  readonly isClosed: boolean;
}

/**
 * @param sound Mono, -1..1, at its own rate (8-96 kHz).
 * @returns the sealed record, closed by the artist or as far as the sound went, and what happened when.
 */
export async function rehearse(
  sound: Sound,
  model: PhraseModel,
  opened: Opened,
  manifest: ClipManifest,
): Promise<Rehearsal> {
  const { samples, rateHz } = sound;
  const room = await enterRoom(opened, manifest);
  const ear = new Ear({ model, address: opened.input.address, rateHz });
  const activity = new SoundActivity(rateHz);
  let allowed: readonly CommandId[] = [];
  const allow = (): void => {
    const next = [...room.companion.listenedFor];
    if (next.length === allowed.length && next.every((command, place) => command === allowed[place])) return;
    allowed = next;
    ear.allow(allowed);
  };

  const chunk = Math.round((rateHz * chunkMs) / 1000);
  for (let at = 0; at < samples.length; at += chunk) {
    allow();
    const part = samples.subarray(at, at + chunk);
    await room.pass((part.length * 1000) / rateHz);
    for (const change of activity.take(part)) {
      if (change === "speechstart" || change === "speechend") await room.talk(change === "speechstart");
    }
    for (const heard of ear.listen(part)) await room.hear(heard);
  }
  for (const heard of ear.finish()) await room.hear(heard);
  const sealed = await room.seal();
  return {
    sealed,
    story: room.story,
    figures: figuresOf(room.story),
    soundMs: (samples.length * 1000) / rateHz,
    isClosed: room.companion.state.context.world.phase === "closed",
  };
}
