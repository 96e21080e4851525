/** The app: opening, preparing, a session, its record. Carries out what the screens ask for with the parts handed in. */
import { begin, resume, type SessionState } from "../../machines/session/decide";
import { bookFor } from "../announcements/phrasebooks";
import { sayEarTrouble, saySoundCheck } from "../announcements/sayNotice";
import { textOf, type Utterance } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import { type CommandId, commandIds } from "../intent/phrases";
import { microphone, recordingSource, type SoundSource } from "../microphone";
import type { Asks, Model, PrepareView, View } from "../screen/model";
import type { Draft } from "../screen/prepare/draft";
import { readProtocol } from "../session/readProtocol";
import type { SessionInput } from "../session/sessionInput";
import { unready } from "../session/station";
import { kindsIn } from "../session/world";
import { todayIn, zoneHere } from "./calendar";
import { keepStorage, saveFile } from "./device";
import type { DeviceMemory } from "./deviceMemory";
import { findPractice, loadRecording, playAloud } from "./practice";
import { type RunningSession, runSession, type SessionParts } from "./runSession";
import { watchedValue } from "./watchedValue";
import type { Hearing } from "./wireHearing";
import { headerFor, type Log, type OpenedLog, practiceLog } from "./wireLog";

export interface AppParts {
  readonly log: OpenedLog;
  readonly memory: DeviceMemory;
  readonly voice: Voice;
  readonly hearing: Hearing;
  /** Address of the app's folder, with its slash. */
  readonly base: string;
  readonly update: () => void;
}

export interface App extends Model {
  setOffline(offline: PrepareView["offline"]): void;
  /** For keys: whether a session runs, and whether letters count. */
  readonly keys: { readonly isOn: boolean; readonly letters: boolean };
}

export async function createApp({ log, memory, voice, hearing, base, update }: AppParts): Promise<App> {
  const view = watchedValue<View>({ at: "opening" });
  const practice = import.meta.env.HAS_PRACTICE ? await findPractice(`${base}practice/`) : null;
  let running: RunningSession | null = null;
  let offline: PrepareView["offline"] = "no";
  let isStarting = false;
  let stopAloud: () => void = () => undefined;
  let spokenTurn = 1_000_000;

  const change = (part: Partial<PrepareView>): void => {
    const { now } = view;
    if (now.at === "prepare") view.set({ ...now, ...part });
  };

  const prepare = async (kept: Log, trouble: PrepareView["trouble"] = null): Promise<void> => {
    const listed = await kept.journal.unfinished();
    const zone = zoneHere();
    view.set({
      at: "prepare",
      protocols: memory.protocols(),
      unfinished: listed.ok
        ? listed.sessions.map(({ session, header, entries }) => ({
            session,
            clientReference: header.input.clientReference,
            protocolName: header.input.protocol.name[header.input.language] ?? header.input.protocol.name.en,
            entries,
          }))
        : [],
      trouble: trouble ?? (listed.ok ? null : { code: listed.code, message: listed.message }),
      importTrouble: null,
      importedName: null,
      busy: false,
      ear: hearing.condition.now,
      lastHeard: null,
      speaking: null,
      hasPractice: practice !== null,
      draft: memory.draft(),
      today: todayIn(zone, Date.now()),
      zone,
      carriedOver: memory.carriedOver(),
      offline,
    });
  };

  if (!log.ok) {
    view.set({ at: "stuck", why: log.why });
    return model();
  }
  const kept = log.log;

  const closed = (state: SessionState): void => {
    const { input, world } = state.context;
    memory.keepOpenSession(null);
    memory.keepCarriedOver(input.station, unready(world.station, kindsIn(input)));
  };

  type Wiring = Pick<SessionParts, "state" | "writer" | "log" | "source" | "isPractice" | "letterKeys">;
  const run = async (wiring: Wiring): Promise<PrepareView["trouble"]> => {
    hearing.stop();
    voice.stop();
    void keepStorage();
    const whenClosed = wiring.isPractice ? () => undefined : closed;
    running = runSession({ ...wiring, voice, hearing, show: view.set, closed: whenClosed });
    const trouble = await running.started;
    if (!trouble) return null;
    await running.end();
    running = null;
    return trouble;
  };

  /** One at a time: a second tap while the log opens begins nothing. */
  const starting = async (start: () => Promise<PrepareView["trouble"]>): Promise<void> => {
    if (isStarting) return;
    isStarting = true;
    change({ busy: true, trouble: null });
    const trouble = await start();
    if (trouble) await prepare(kept, trouble);
    isStarting = false;
  };

  const beginWith = async (
    into: Log,
    input: SessionInput,
    source: SoundSource,
    how: { isPractice: boolean; letterKeys: boolean },
  ): Promise<PrepareView["trouble"]> => {
    const made = await headerFor(into, input, await hearing.model);
    if (!made.ok) return made;
    const opened = await into.journal.open(made.header);
    if (!opened.ok) return opened;
    if (!how.isPractice) memory.keepOpenSession(opened.writer.session);
    return run({ state: begin(input), writer: opened.writer, log: into, source, ...how });
  };

  const resumeSession = async (session: string): Promise<PrepareView["trouble"]> => {
    const taken = await kept.journal.resume(session);
    if (!taken.ok) return taken;
    const { header, entries } = taken.kept;
    const facts = entries.map((entry) => entry.fact);
    const state = facts.length === 0 ? begin(header.input) : resume(header.input, facts);
    memory.keepOpenSession(session);
    const { letterKeys } = memory.draft();
    return run({ state, writer: taken.writer, log: kept, source: microphone(), isPractice: false, letterKeys });
  };

  const practise = async (): Promise<PrepareView["trouble"]> => {
    if (!practice) return null;
    try {
      const recording = await loadRecording(`${base}practice/`, practice);
      const trouble = await beginWith(await practiceLog(), practice.input, recordingSource(recording, "practice"), {
        isPractice: true,
        letterKeys: true,
      });
      stopAloud = trouble ? stopAloud : playAloud(recording);
      return trouble;
    } catch (error) {
      return { code: "no-recording", message: error instanceof Error ? error.message : String(error) };
    }
  };

  /** On the prepare screen the app speaks for itself: no session, no queue. */
  const sayOnce = (utterance: Utterance): void => {
    change({ speaking: textOf(utterance) });
    spokenTurn += 1;
    voice.speak(spokenTurn, utterance);
  };
  voice.onEnded((turn) => {
    if (turn === spokenTurn) change({ speaking: null });
  });
  hearing.condition.subscribe(() => change({ ear: hearing.condition.now }));

  const book = bookFor("en");
  const tryMicrophone = (on: boolean): void => {
    if (running) hearing.retry();
    else if (on) hearTrial();
    else hearing.stop();
  };
  const hearTrial = (): void => {
    hearing.allow(new Set<CommandId>(commandIds));
    hearing.listen(microphone(), memory.draft().address, {
      heard: (heard) => {
        if (heard.kind === "understood") change({ lastHeard: heard.command });
      },
      talk: () => undefined,
      lost: (because) =>
        sayOnce(sayEarTrouble(book, because === "denied" ? "denied" : because === "no-device" ? "none" : "lost")),
      back: () => undefined,
    });
  };

  const asks: Asks = {
    begin: (input, draft: Draft) => {
      memory.keepDraft(draft);
      void starting(() => beginWith(kept, input, microphone(), { isPractice: false, letterKeys: draft.letterKeys }));
    },
    resume: (session) => void starting(() => resumeSession(session)),
    practise: () => void starting(practise),
    async addProtocol(file) {
      const text = await file.text();
      const known = readProtocol(text);
      if (!known.ok) return change({ importTrouble: known.trouble, importedName: null });
      memory.addProtocol(text, known.protocol);
      change({ protocols: memory.protocols(), importTrouble: null, importedName: known.protocol.name.en });
    },
    tryMicrophone,
    trySpeaker: () => sayOnce(saySoundCheck(book)),
    tell: (event, way) => running?.tell(event, way),
    command: (command, way) => running?.command(command, way),
    saveRecord() {
      if (running?.recordText) saveFile(`gloveside-${running.session}.json`, running.recordText);
    },
    async nextClient() {
      stopAloud();
      stopAloud = () => undefined;
      await running?.end();
      running = null;
      memory.keepOpenSession(null);
      await prepare(kept);
    },
    reload: () => location.reload(),
    update,
  };

  const open = memory.openSession();
  await prepare(kept);
  const isUnfinished = view.now.at === "prepare" && view.now.unfinished.some(({ session }) => session === open);
  if (open !== null && isUnfinished) asks.resume(open);
  return model();

  function model(): App {
    return {
      get view() {
        return view.now;
      },
      subscribe: view.subscribe,
      level: hearing.level,
      asks: log.ok ? asks : stuckAsks,
      setOffline(now) {
        offline = now;
        change({ offline });
      },
      get keys() {
        const { now } = view;
        return now.at === "session" ? { isOn: true, letters: now.letterKeys } : { isOn: false, letters: false };
      },
    };
  }
}

const nothing = () => undefined;
/** Nothing can be kept, so nothing can be asked for but another try. */
const stuckAsks: Asks = {
  begin: nothing,
  resume: nothing,
  practise: nothing,
  addProtocol: nothing,
  tryMicrophone: nothing,
  trySpeaker: nothing,
  tell: nothing,
  command: nothing,
  saveRecord: nothing,
  nextClient: nothing,
  reload: () => location.reload(),
  update: nothing,
};
