/** The app: opening, preparing, a session, its record. Carries out what the screens ask for with the parts handed in. */
import { spokenLanguages } from "../announcements/languages";
import { protocolDigest } from "../drafting/version";
import { fetchedOnce } from "../screen/fetchedOnce";
import type { Asks, Model, PrepareView, TourView, View } from "../screen/model";
import { sessionScreens } from "../screen/pages/screens";
import type { ProtocolsModel } from "../screen/protocols/protocolsModel";
import type { Settings } from "../screen/settings/settings";
import type { FetchedWords } from "../screen/words/fetchedWords";
import type { KeepTrouble } from "../session/keeper";
import { mostCharacters } from "../session/readProtocol";
import { keepStorage, saveFile } from "./device";
import type { DeviceMemory } from "./deviceMemory";
import type { DevicePack } from "./devicePack";
import { lateTeaching } from "./lateTeaching";
import { prepareView } from "./prepareView";
import type { AwakeCompanion, WakeParts } from "./wakeCompanion";
import { type Watched, watchedValue } from "./watchedValue";
import type { Log, OpenedLog } from "./wireLog";

/** What the companion is told by the app when it wakes. */
export type ToldByApp = Pick<WakeParts, "show" | "change" | "settings"> & { readonly log: Log };

export interface AppParts {
  readonly log: OpenedLog;
  readonly memory: DeviceMemory;
  readonly device: DevicePack;
  readonly words: FetchedWords;
  /** Null where nothing can be kept. */
  readonly protocols: ProtocolsModel | null;
  /** Fetches what the companion is made of, and makes it. */
  readonly wake: (told: ToldByApp) => Promise<AwakeCompanion>;
  /** Address of the app's folder, with its slash. */
  readonly base: string;
  readonly update: () => void;
}

export interface App extends Model {
  setOffline(offline: PrepareView["offline"]): void;
  /** Once the first screen stands: fetches the rest, so that nothing is waited for later. Settled when it is here or lost. */
  wake(): Promise<void>;
  /** For keys: whether a session runs, and whether letters count. */
  readonly keys: { readonly isOn: boolean; readonly letters: boolean };
}

export async function createApp(parts: AppParts): Promise<App> {
  const { log, memory, device, words, protocols, wake, base, update } = parts;
  const view = watchedValue<View>({ at: "opening" });
  const settings = watchedValue<Settings>(memory.settings());
  const level = watchedValue(0);
  const soundLost = watchedValue<Model["soundLost"]["now"]>({ droppedMs: 0 });
  const tour = watchedValue<TourView | null>(null);
  const language = () => settings.now.language;
  let offline: PrepareView["offline"] = "no";

  const change = (part: Partial<PrepareView>): void => {
    const { now } = view;
    if (now.at === "prepare") view.set({ ...now, ...part });
  };
  const companion = fetchedOnce(async () => {
    if (!log.ok) throw new Error("nothing can be kept, so nothing begins");
    const told = { log: log.log, show: view.set, change, settings };
    const [awake] = await Promise.all([wake(told), sessionScreens.get()]);
    follow(level, awake.hearing.level);
    follow(soundLost, awake.hearing.quality);
    follow(tour, awake.tour.now);
    return awake;
  });
  const model = (asks: Asks): App => ({
    get view() {
      return view.now;
    },
    subscribe: view.subscribe,
    level,
    soundLost,
    settings,
    device: device.state,
    tour,
    asks,
    companion,
    words,
    teaching: lateTeaching(() => companion.now?.teaching ?? null),
    async wake() {
      await companion.get().catch(() => undefined);
      // So that another language is there at once, also without a network.
      await Promise.allSettled(spokenLanguages.map(words.fetch));
    },
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
  const kept = log.log;
  let isStarting = false;
  void device.check(language());

  const prepare = async (trouble: KeepTrouble | null = null): Promise<void> => {
    const ear = companion.now?.hearing.condition.now ?? "off";
    const hasPractice = import.meta.env.HAS_PRACTICE;
    const given = { protocols: protocols.offered, trouble, ear, hasPractice, offline };
    view.set(await prepareView(kept, memory, given));
    // Something may have been proved while the log was read.
    change({ protocols: protocols.offered });
  };

  const notFetched = (error: unknown): KeepTrouble => ({ code: "not-fetched", message: String(error) });

  /** One at a time: a second tap while the log opens begins nothing. */
  const starting = async (start: (here: AwakeCompanion) => Promise<KeepTrouble | null>): Promise<void> => {
    if (isStarting) return;
    isStarting = true;
    change({ busy: true, trouble: null });
    const failed = (error: unknown): KeepTrouble => ({ code: "failed", message: String(error) });
    const trouble = await companion.get().then((here) => start(here).catch(failed), notFetched);
    if (trouble) await prepare(trouble);
    isStarting = false;
  };

  /** At once where the companion is here; else as soon as it is, or the screen says that it cannot be had. */
  const withCompanion = (act: (here: AwakeCompanion) => void): void => {
    if (companion.now) act(companion.now);
    else companion.get().then(act, (error) => change({ trouble: notFetched(error) }));
  };

  const apply = (part: Partial<Settings>): void => {
    const before = language();
    const next = { ...settings.now, ...part };
    memory.keepSettings(next);
    settings.set(next);
    if (next.language === before) return;
    void device.check(next.language);
    withCompanion(({ voice }) => void voice.speakIn(next.language));
  };

  const asks: Asks = {
    begin(input, draft) {
      memory.keepDraft(draft);
      const digest = protocolDigest(input.protocol);
      // From here on others are in the room: the records are locked again.
      kept.vault?.close();
      const isOffered = protocols.offered.some((one) => protocolDigest(one) === digest);
      void starting(async ({ sessions }) => (isOffered ? sessions.begin(input, draft) : notProved));
    },
    resume: (session) => void starting(({ sessions }) => sessions.resume(session)),
    practise: () => void starting(({ sessions }) => sessions.practise(`${base}practice/`)),
    async addProtocol(file) {
      change({ importing: { at: "checking" } });
      // One byte more than any protocol has is enough to see that it is none.
      const added = await protocols.add(await file.slice(0, 4 * mostCharacters + 1).text());
      change({ importing: { at: "added", added }, protocols: protocols.offered });
    },
    beginTour: (address) => withCompanion((here) => here.tour.begin(address)),
    nextInTour: () => companion.now?.tour.next(),
    endTour: () => companion.now?.tour.stop(),
    prepareDevice() {
      // Not waited for: Firefox asks the person first, and answers only when they do.
      void keepStorage();
      void device.prepare();
    },
    changeSettings(part) {
      if (part.language === undefined || words.has(part.language)) return apply(part);
      words.fetch(part.language).then(
        () => apply(part),
        (error) => change({ trouble: notFetched(error) }),
      );
    },
    tryMicrophone: (isOn, address) => withCompanion(({ trial }) => trial.microphone(isOn, address)),
    checkSound: (address) => withCompanion(({ trial }) => trial.check(address)),
    retryMicrophone: () => companion.now?.hearing.retry(),
    trySpeaker: () => withCompanion(({ trial }) => trial.speaker()),
    tell: (event, way) => companion.now?.sessions.running?.tell(event, way),
    command: (command, way) => companion.now?.sessions.running?.command(command, way),
    saveRecord() {
      const running = companion.now?.sessions.running;
      void running?.save((text) => saveFile(`gloveside-${running.session}.json`, text));
    },
    saveFile,
    async nextClient() {
      await companion.now?.sessions.end();
      memory.keepOpenSession(null);
      await companion.now?.voice.speakIn(language());
      await prepare();
    },
    lossRead() {
      memory.forgetLoss();
      change({ loss: null });
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

/** Shows in one value what becomes of another. */
function follow<T>(into: Watched<T>, from: Pick<Watched<T>, "now" | "subscribe">): void {
  into.set(from.now);
  from.subscribe(() => into.set(from.now));
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
  lossRead: nothing,
  reload: () => location.reload(),
  update: nothing,
};
