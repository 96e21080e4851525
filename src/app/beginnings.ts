/** The three ways into a session: begun anew, taken up again, or practised with the recorded artist. */
import { begin, resume } from "../../machines/session/decide";
import { type SpokenLanguage, spokenOr } from "../announcements/languages";
import type { CodeCamera } from "../barcode/codeCamera";
import { clientIn, inputWith, notesIn } from "../log";
import { recordingSource, type SoundSource } from "../microphone";
import type { RecordView, SessionView } from "../screen/model";
import type { Draft } from "../screen/prepare/draft";
import type { KeepTrouble } from "../session/keeper";
import type { SessionInput } from "../session/sessionInput";
import type { PlannerPort } from "../turnaround/plannerPort";
import { keepStorage } from "./device";
import type { DeviceMemory } from "./deviceMemory";
import { openingFor, practiceLog } from "./openSession";
import { findPractice, loadRecording, playAloud } from "./practice";
import { type RunningSession, runSession, type SessionParts } from "./runSession";
import type { Hearing } from "./wireHearing";
import type { Log } from "./wireLog";
import type { SpeakingVoice } from "./wireVoice";

export interface BeginningParts {
  readonly log: Log;
  readonly memory: DeviceMemory;
  readonly voice: SpeakingVoice;
  readonly hearing: Hearing;
  readonly camera: CodeCamera;
  readonly openMicrophone: () => SoundSource;
  readonly show: (view: SessionView | RecordView) => void;
  readonly fetchWords: (language: SpokenLanguage) => Promise<void>;
  readonly planner: () => PlannerPort;
}

type Wiring = Pick<
  SessionParts,
  "state" | "writer" | "log" | "source" | "isPractice" | "notesSoFar" | "letterKeys" | "readsCodes"
>;
type How = Pick<Wiring, "isPractice" | "letterKeys" | "readsCodes">;

export function beginnings(parts: BeginningParts) {
  const { log, memory, voice, hearing, camera, openMicrophone, show } = parts;
  /** Made before the session that it serves: its program is here when the session begins. */
  let planner = parts.planner();
  let running: RunningSession | null = null;
  let stopAloud: () => void = () => undefined;

  const end = async (): Promise<void> => {
    stopAloud();
    stopAloud = () => undefined;
    if (!running) return;
    await running.end();
    running = null;
    planner = parts.planner();
  };

  const run = async (wiring: Wiring): Promise<KeepTrouble | null> => {
    hearing.stop();
    voice.stop();
    const language = spokenOr(wiring.state.context.input.language);
    await Promise.all([voice.speakIn(language), parts.fetchWords(language)]);
    void keepStorage();
    const closed = () => {
      if (!wiring.isPractice) memory.keepOpenSession(null);
    };
    running = runSession({ ...wiring, planner, voice, hearing, camera, show, closed });
    const trouble = await running.started;
    if (trouble) await end();
    return trouble;
  };

  const beginIn = async (into: Log, input: SessionInput, source: SoundSource, how: How) => {
    const made = await openingFor(into, input, await hearing.modelOf(spokenOr(input.language)));
    if (!made.ok) return made;
    const opened = await into.journal.open(made.opening);
    if (!opened.ok) return opened;
    if (!how.isPractice) memory.keepOpenSession(opened.writer.session);
    return run({ state: begin(input), writer: opened.writer, log: into, source, notesSoFar: 0, ...how });
  };

  return {
    /** The session that runs, or whose record is shown. */
    get running() {
      return running;
    },
    end,
    begin: (input: SessionInput, { letterKeys, readsCodes }: Draft): Promise<KeepTrouble | null> =>
      beginIn(log, input, openMicrophone(), { isPractice: false, letterKeys, readsCodes }),
    async resume(session: string): Promise<KeepTrouble | null> {
      const taken = await log.journal.resume(session);
      if (!taken.ok) return taken;
      const { header, entries, personal } = taken.kept;
      const input = inputWith(header, clientIn(header, personal));
      const facts = entries.map((entry) => entry.fact);
      const state = facts.length === 0 ? begin(input, header.rules) : resume(input, facts, header.rules);
      memory.keepOpenSession(session);
      const { letterKeys, readsCodes } = memory.draft();
      const how = { isPractice: false, letterKeys, readsCodes };
      const notesSoFar = notesIn(entries).length;
      return run({ state, writer: taken.writer, log, source: openMicrophone(), notesSoFar, ...how });
    },
    /** @param folder address of the practice folder, with its slash. */
    async practise(folder: string): Promise<KeepTrouble | null> {
      const practice = await findPractice(folder);
      if (!practice) return { code: "not-fetched", message: folder };
      const recording = await loadRecording(folder, practice);
      const source = recordingSource(recording, "practice");
      const how = { isPractice: true, letterKeys: true, readsCodes: false };
      const trouble = await beginIn(await practiceLog(), practice.input, source, how);
      if (!trouble) stopAloud = playAloud(recording);
      return trouble;
    },
  };
}
