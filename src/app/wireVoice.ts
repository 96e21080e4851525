/** The voice of this page: recorded clips through howler, a local voice for free text, an empty manifest if need be. */
import { ClipManifest } from "../announcements/clips";
import { type HeardAs, heardAs } from "../announcements/heardAs";
import { createHowlerPlayer } from "../announcements/howlerPlayer";
import { createLocalVoice } from "../announcements/localVoice";
import { bookFor, type SpokenLanguage } from "../announcements/phrasebooks";
import { sayStep } from "../announcements/sayStep";
import { createSpeaker } from "../announcements/speaker";
import type { Utterance } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import type { Step } from "../session/protocol";

const realWait = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

export interface SpeakingVoice extends Voice {
  /** Speaks in another language from the next utterance on; its clips are there when this is settled. */
  speakIn(language: SpokenLanguage): Promise<void>;
  heardAs(utterance: Pick<Utterance, "parts">): HeardAs;
}

export interface VoiceHere {
  readonly voice: SpeakingVoice;
  /** What is played, for the ear to leave out; null where this browser does not hand it over. */
  readonly played: MediaStream | null;
}

/** The announcement of a step as a session in the careful mode makes it. */
export const announcementOf = (step: Step, language: SpokenLanguage): Utterance =>
  sayStep(bookFor(language), [step], "careful");

/** @param base address of the app's folder, with its slash. */
export async function wireVoice(base: string, first: SpokenLanguage): Promise<VoiceHere> {
  const manifests = new Map<SpokenLanguage, ClipManifest>();
  const fetched = async (language: SpokenLanguage): Promise<ClipManifest> => {
    const manifest = manifests.get(language) ?? (await manifestAt(`${base}clips/${language}.json`, language));
    manifests.set(language, manifest);
    return manifest;
  };
  let manifest = await fetched(first);
  let local = createLocalVoice(first);
  const everyClip = () => [...manifests.values()].flatMap(({ clips }) => Object.values(clips));
  const player = createHowlerPlayer((file) => everyClip().filter((clip) => clip.file === file), {
    clips: `${base}clips/`,
    cues: `${base}cues/`,
  });
  const speaker = createSpeaker({ manifest: () => manifest, player, local: () => local, wait: realWait });
  const voice: SpeakingVoice = {
    ...speaker,
    async speakIn(language) {
      manifest = await fetched(language);
      local = createLocalVoice(language);
    },
    heardAs: (utterance) => heardAs(utterance, manifest, local.isThere()),
  };
  return { voice, played: player.played };
}

/** Without its manifest no clip can be found; the earcons and a local voice still sound. */
async function manifestAt(address: string, language: SpokenLanguage): Promise<ClipManifest> {
  try {
    return ClipManifest.parse(await (await fetch(address)).json());
  } catch {
    return { format: "gloveside-clips", formatVersion: 1, language, clips: {} };
  }
}
