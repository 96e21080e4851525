/**
 * The companion wakes: its ear, its voice, the ways into a session, the sound check, the tour and teaching. Fetched as one
 * once the first screen stands, and before any session: nothing of it is waited for later.
 */
import type { CodeCamera } from "../barcode/codeCamera";
import { microphone } from "../microphone";
import { folderFor } from "../recogniser/engine/modelFolder";
import { workerEar } from "../recogniser/engine/workerEar";
import { workerTeacher } from "../recogniser/ownVoice/teachPort";
import type { Settings } from "../screen/settings/settings";
import { beginnings } from "./beginnings";
import { saveFile } from "./device";
import { ownVoiceStore } from "./ownVoiceStore";
import { type SoundTrialParts, soundTrial } from "./soundTrial";
import { teachVoice } from "./teachVoice";
import type { Watched } from "./watchedValue";
import { createHearing } from "./wireHearing";
import type { Log } from "./wireLog";
import { wireTour } from "./wireTour";
import type { VoiceHere } from "./wireVoice";
import { workerPlanner } from "./workerPlanner";

export interface WakeParts extends Pick<SoundTrialParts, "change"> {
  readonly settings: Watched<Settings>;
  readonly log: Log;
  readonly memory: Parameters<typeof beginnings>[0]["memory"];
  readonly voice: VoiceHere;
  readonly camera: CodeCamera;
  /** Address of the app's folder, with its slash. */
  readonly base: string;
  readonly show: Parameters<typeof beginnings>[0]["show"];
  readonly fetchWords: Parameters<typeof beginnings>[0]["fetchWords"];
}

export type AwakeCompanion = ReturnType<typeof wakeCompanion>;

export function wakeCompanion({
  log,
  memory,
  voice: here,
  camera,
  base,
  show,
  change,
  settings,
  fetchWords,
}: WakeParts) {
  const { voice, played } = here;
  const hearing = createHearing((spoken) => workerEar(new URL(`voice/${folderFor(spoken)}`, base)));
  const openMicrophone = () => microphone({ played });
  const sounding = { voice, hearing, openMicrophone, language: () => settings.now.language };
  return {
    voice,
    hearing,
    sessions: beginnings({
      log,
      memory,
      voice,
      hearing,
      camera,
      openMicrophone,
      show,
      fetchWords,
      planner: workerPlanner,
    }),
    trial: soundTrial({ ...sounding, change }),
    tour: wireTour(sounding),
    teaching: teachVoice({ ...sounding, settings, base, saveFile, store: ownVoiceStore(), teacher: workerTeacher }),
  };
}
