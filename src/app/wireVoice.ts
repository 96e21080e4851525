/** The voice of this page: recorded clips through howler, a local voice for free text, an empty manifest if need be. */
import { ClipManifest } from "../announcements/clips";
import { createHowlerPlayer } from "../announcements/howlerPlayer";
import { createLocalVoice } from "../announcements/localVoice";
import { createSpeaker } from "../announcements/speaker";
import type { Voice } from "../announcements/voice";

const realWait = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

/** @param base address of the app's folder, with its slash. */
export async function wireVoice(
  base: string,
  language: string,
): Promise<{ readonly voice: Voice; readonly played: MediaStream | null }> {
  const manifest = await manifestAt(`${base}clips/${language}.json`);
  const player = createHowlerPlayer(manifest, { clips: `${base}clips/`, cues: `${base}cues/` });
  const voice = createSpeaker({ manifest, player, local: createLocalVoice(language), wait: realWait });
  return { voice, played: player.played };
}

/** Without its manifest no clip can be found; the earcons and a local voice still sound. */
async function manifestAt(address: string): Promise<ClipManifest> {
  try {
    return ClipManifest.parse(await (await fetch(address)).json());
  } catch {
    return { format: "gloveside-clips", formatVersion: 1, language: "en", clips: {} };
  }
}
