/** The app: opening, preparing, a session, its record. Carries out what the screens ask for with the parts handed in. */
import type { CodeCamera } from "../barcode/codeCamera";
import { protocolDigest } from "../drafting/version";
import type { SoundSource } from "../microphone";
import type { Asks, Model, PrepareView, View } from "../screen/model";
import type { ProtocolsModel } from "../screen/protocols/protocolsModel";
import type { Settings } from "../screen/settings/settings";
import type { TeachModel } from "../screen/voice/teachModel";
import type { KeepTrouble } from "../session/keeper";
import { beginnings } from "./beginnings";
import { keepStorage, saveFile } from "./device";
import type { DeviceMemory } from "./deviceMemory";
import type { DevicePack } from "./devicePack";
import { findPractice } from "./practice";
import { prepareView } from "./prepareView";
import { soundTrial } from "./soundTrial";
import { type Watched, watchedValue } from "./watchedValue";
import type { Hearing } from "./wireHearing";
import type { OpenedLog } from "./wireLog";
import { wireTour } from "./wireTour";
import type { SpeakingVoice } from "./wireVoice";

export interface AppParts {
  readonly log: OpenedLog;
  readonly memory: DeviceMemory;
  readonly device: DevicePack;
  readonly voice: SpeakingVoice;
  readonly hearing: Hearing;
  readonly camera: CodeCamera;
  readonly openMicrophone: () => SoundSource;
  /** Null where nothing can be kept. */
  readonly protocols: ProtocolsModel | null;
  readonly teaching: (settings: Watched<Settings>) => TeachModel;
  /** Address of the app's folder, with its slash. */
  readonly base: string;
  readonly update: () => void;
}

export interface App extends Model {
  setOffline(offline: PrepareView["offline"]): void;
  /** For keys: whether a session runs, and whether letters count. */
  readonly keys: { readonly isOn: boolean; readonly letters: boolean };
}

export async function createApp(parts: AppParts): Promise<App> {
  const { log, memory, device, voice, hearing, camera, openMicrophone, protocols, teaching, base, update } = parts;
  const view = watchedValue<View>({ at: "opening" });
  const settings = watchedValue<Settings>(memory.settings());
  let offline: PrepareView["offline"] = "no";
  const teaches = teaching(settings);

  const tour = wireTour({ voice, hearing, openMicrophone, language: () => settings.now.language });

  const change = (part: Partial<PrepareView>): void => {
    const { now } = view;
    if (now.at === "prepare") view.set({ ...now, ...part });
  };
  const model = (asks: Asks): App => ({
    get view() {
      return view.now;
    },
    subscribe: view.subscribe,
    level: hearing.level,
    soundLost: hearing.quality,
    settings,
    device: device.state,
    tour: tour.now,
    asks,
    teaching: teaches,
    setOffline(now) {
      offline = now;
      change({ offline });
    },
    get keys() {
      const { now } = view;
      return now.at === "session" ? { isOn: true, letters: now.letterKeys } : { isOn: false, letters: false };
    },
  });

  if (!log.ok || !protocols) {
    view.set({ at: "stuck", why: log.ok ? "noStore" : log.why });
    return model(stuckAsks);
  }
  const { journal } = log.log;
  const practice = import.meta.env.HAS_PRACTICE ? await findPractice(`${base}practice/`) : null;
  const sessions = beginnings({ log: log.log, memory, voice, hearing, camera, openMicrophone, show: view.set });
  const trial = soundTrial({ voice, hearing, openMicrophone, change, language: () => settings.now.language });
  let isStarting = false;
  void device.check(settings.now.language);

  const prepare = async (trouble: KeepTrouble | null = null): Promise<void> => {
    const { now: ear } = hearing.condition;
    const { offered } = protocols;
    const given = { protocols: offered, trouble, ear, hasPractice: practice !== null, offline };
    view.set(await prepareView(journal, memory, given));
    // Something may have been proved while the log was read.
    change({ protocols: protocols.offered });
  };

  /** One at a time: a second tap while the log opens begins nothing. */
  const starting = async (start: () => Promise<KeepTrouble | null>): Promise<void> => {
    if (isStarting) return;
    isStarting = true;
    change({ busy: true, trouble: null });
    const failed = (error: unknown): KeepTrouble => ({ code: "failed", message: String(error) });
    const trouble = await start().catch(failed);
    if (trouble) await prepare(trouble);
    isStarting = false;
  };

  const asks: Asks = {
    begin(input, draft) {
      memory.keepDraft(draft);
      const digest = protocolDigest(input.protocol);
      const isOffered = protocols.offered.some((one) => protocolDigest(one) === digest);
      void starting(async () => (isOffered ? sessions.begin(input, draft) : notProved));
    },
    resume: (session) => void starting(() => sessions.resume(session)),
    practise() {
      if (practice) void starting(() => sessions.practise(`${base}practice/`, practice));
    },
    async addProtocol(file) {
      change({ importing: { at: "checking" } });
      const added = await protocols.add(await file.text());
      change({ importing: { at: "added", added }, protocols: protocols.offered });
    },
    beginTour: tour.begin,
    nextInTour: tour.next,
    endTour: tour.stop,
    prepareDevice() {
      // Not waited for: Firefox asks the person first, and answers only when they do.
      void keepStorage();
      void device.prepare();
    },
    changeSettings(part) {
      const next = { ...settings.now, ...part };
      memory.keepSettings(next);
      settings.set(next);
      void voice.speakIn(next.language);
      void device.check(next.language);
    },
    tryMicrophone: trial.microphone,
    checkSound: trial.check,
    retryMicrophone: hearing.retry,
    trySpeaker: trial.speaker,
    tell: (event, way) => sessions.running?.tell(event, way),
    command: (command, way) => sessions.running?.command(command, way),
    async saveRecord() {
      const { running } = sessions;
      const text = running && ((await running.textSoFar()) ?? running.recordText);
      if (running && text) saveFile(`gloveside-${running.session}.json`, text);
    },
    saveFile,
    async nextClient() {
      await sessions.end();
      memory.keepOpenSession(null);
      await voice.speakIn(settings.now.language);
      await prepare();
    },
    reload: () => location.reload(),
    update,
  };

  protocols.subscribe(() => {
    const { now } = view;
    if (now.at === "prepare" && now.protocols !== protocols.offered) change({ protocols: protocols.offered });
  });
  await prepare();
  const open = memory.openSession();
  const isUnfinished = view.now.at === "prepare" && view.now.unfinished.some(({ session }) => session === open);
  if (open !== null && isUnfinished) asks.resume(open);
  return model(asks);
}

/** What the screens offer is proved; this is for what changed under them, such as another window. */
const notProved: KeepTrouble = {
  code: "not-proved",
  message: "The protocol is not proved. Look at it under Protocols.",
};

const nothing = () => undefined;
/** Nothing can be kept, so nothing can be asked for but another try. */
const stuckAsks: Asks = {
  begin: nothing,
  resume: nothing,
  practise: nothing,
  addProtocol: nothing,
  beginTour: nothing,
  nextInTour: nothing,
  endTour: nothing,
  prepareDevice: nothing,
  changeSettings: nothing,
  tryMicrophone: nothing,
  checkSound: nothing,
  retryMicrophone: nothing,
  trySpeaker: nothing,
  tell: nothing,
  command: nothing,
  saveRecord: nothing,
  saveFile,
  nextClient: nothing,
  reload: () => location.reload(),
  update: nothing,
};
