/**
 * Teaching, hands free: asks for a phrase aloud, records until it is over, says what was wrong with a take, and learns at the
 * end. Recordings go to the worker and are gone with it; only what was learnt is kept, once consent was given on the screen.
 */
import { bookFor } from "../announcements/phrasebooks";
import { askTake, sayTeaching } from "../announcements/sayNotice";
import type { Utterance } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import type { AddressWord, CommandId } from "../intent/phrases";
import type { SoundSource } from "../microphone";
import { folderFor } from "../recogniser/engine/modelFolder";
import type { OwnVoice } from "../recogniser/ownVoice/ownVoice";
import type { TeachPort } from "../recogniser/ownVoice/teachPort";
import type { Settings } from "../screen/settings/settings";
import { notTeaching, type TeachModel, type TeachNow, type TeachTrouble, takesEach } from "../screen/voice/teachModel";
import type { OwnVoiceStore } from "./ownVoiceStore";
import { takeRecorder } from "./takeRecorder";
import { type Watched, watchedValue } from "./watchedValue";
import type { Hearing } from "./wireHearing";

export interface TeachParts {
  readonly voice: Voice;
  readonly hearing: Hearing;
  readonly openMicrophone: () => SoundSource;
  readonly store: OwnVoiceStore;
  readonly teacher: () => TeachPort;
  readonly base: string;
  /** Another language is another phrase model, and what was taught belongs to one. */
  readonly settings: Watched<Settings>;
  readonly saveFile: (name: string, text: string) => void;
}

/** Turns of its own, apart from those of sessions, the prepare screen and the studio. */
const firstTurn = 3_000_000;
const triesEach = 3;
/** Somebody who says nothing so often has gone away. */
const mostSilent = 3;

export function teachVoice(parts: TeachParts): TeachModel {
  const { voice, hearing, store } = parts;
  const language = () => parts.settings.now.language;
  const now = watchedValue<TeachNow>(notTeaching);
  const change = (part: Partial<TeachNow>) => now.set({ ...now.now, ...part });
  let own: OwnVoice | null = null;
  let turn = firstTurn;
  /** Grows when a lesson is broken off, so that what comes late is nobody's. */
  let lesson = 0;
  let isEnough = false;

  const say = (utterance: Utterance): Promise<void> =>
    new Promise((said) => {
      const mine = ++turn;
      const stop = voice.onEnded((ended) => {
        if (ended !== mine) return;
        stop();
        said();
      });
      voice.speak(mine, utterance);
    });

  const readStore = async (): Promise<void> => {
    const [kept, digest] = [await store.read().catch(() => null), await hearing.modelOf(language())];
    own = kept?.now ?? null;
    const fits = own !== null && own.model === digest;
    hearing.hearWithOwnVoice(fits ? own : null);
    change({
      canUndo: kept?.canUndo ?? false,
      taught: own && {
        taughtAt: own.taughtAt,
        address: own.address,
        ...own.figures,
        isUsed: own.head !== null,
        words: own.words.map(({ command }) => command),
        fits,
      },
    });
  };

  const end = (trouble: TeachTrouble | null): void => {
    lesson += 1;
    hearing.stop();
    voice.stop();
    change({ state: "idle", ask: null, trouble });
  };

  async function teach(address: AddressWord, commands: readonly CommandId[], ownWords: boolean): Promise<void> {
    const mine = ++lesson;
    const goesOn = () => lesson === mine;
    const book = bookFor(language());
    const consentAt = new Date().toISOString();
    isEnough = false;
    change({
      ...notTeaching,
      taught: now.now.taught,
      canUndo: now.now.canUndo,
      state: "opening",
      phrases: commands.length,
    });
    const teacher = parts.teacher();
    const folder = folderFor(book.language);
    const [modelFolder, negativesFolder] = [`${parts.base}voice/${folder}`, `${parts.base}own-voice/${folder}`];
    const recorder = takeRecorder(hearing);
    try {
      hearing.allow(new Set());
      const isListening = recorder.open(parts.openMicrophone(), address, book.language);
      const opened = await teacher.ask({ type: "open", modelFolder, negativesFolder, address });
      if (!goesOn()) return;
      if (opened.type !== "ready") return end("noModel");
      if (!(await isListening)) return goesOn() ? end("noMicrophone") : undefined;
      change({ state: "asking" });
      await say(sayTeaching(book, "begin"));
      let silent = 0;
      for (const [place, command] of commands.entries()) {
        for (let take = 1, tries = 0; take <= takesEach && tries < triesEach; ) {
          if (!goesOn()) return;
          if (isEnough || silent >= mostSilent) break;
          change({ state: "asking", ask: { command, take } });
          if (take === 1 && tries === 0) await say(askTake(book, address, command));
          else voice.cue("heard");
          if (!goesOn()) return;
          change({ state: "listening" });
          const recorded = await recorder.record();
          if (!goesOn() || isEnough) continue;
          change({ state: "checking" });
          const { samples, rateHz } = recorded ?? { samples: new Float32Array(0), rateHz: 16_000 };
          const answered = recorded && (await teacher.ask({ type: "take", command, ownWords, samples, rateHz }));
          if (!goesOn()) return;
          const trouble = takeTroubleOf(answered);
          change({ lastTrouble: trouble });
          silent = trouble === "nothing" ? silent + 1 : 0;
          if (trouble === null) {
            take += 1;
            tries = 0;
          } else {
            tries += 1;
            await say(sayTeaching(book, trouble));
          }
        }
        if (goesOn()) change({ phrasesDone: place + 1 });
      }
      if (!goesOn()) return;
      change({ state: "learning", ask: null });
      void say(sayTeaching(book, "learning"));
      const learnt = await teacher.ask({ type: "learn", consentAt, taughtAt: new Date().toISOString() });
      if (!goesOn()) return;
      if (learnt.type !== "learnt" || learnt.own === null) return end("nothingTaught");
      const joined = withWordsFrom(own, learnt.own);
      await store.keep(joined);
      await readStore();
      const isBetter = joined.head !== null || joined.words.length > 0;
      change({ learntMs: learnt.tookMs });
      await say(sayTeaching(book, isBetter ? "better" : "noBetter"));
      if (goesOn()) end(null);
    } catch {
      if (goesOn()) end("notKept");
    } finally {
      recorder.close();
      teacher.close();
    }
  }

  let told = language();
  parts.settings.subscribe(() => {
    if (told === language()) return;
    told = language();
    void readStore();
  });
  void readStore();
  return {
    get now() {
      return now.now;
    },
    subscribe: now.subscribe,
    begin: (address, commands, ownWords) => void teach(address, commands, ownWords),
    enough() {
      isEnough = true;
    },
    cancel: () => end(null),
    undo: () => void store.undo().then(readStore),
    forget: () => void store.forget().then(readStore),
    saveFile() {
      if (own) parts.saveFile("gloveside-own-voice.json", JSON.stringify(own));
    },
  };
}

function takeTroubleOf(answered: Awaited<ReturnType<TeachPort["ask"]>> | null) {
  if (answered === null) return "nothing";
  if (answered.type !== "taken") return "other";
  return answered.answer.ok ? null : answered.answer.trouble;
}

/** Phrases and own words are taught in lessons of their own: the newer lesson leaves the other's part as it was. */
function withWordsFrom(before: OwnVoice | null, learnt: OwnVoice): OwnVoice {
  if (before === null || before.model !== learnt.model || before.address !== learnt.address) return learnt;
  const told = new Set(learnt.words.map(({ command }) => command));
  const words = [...before.words.filter(({ command }) => !told.has(command)), ...learnt.words];
  const isWordsOnly = learnt.head === null && learnt.words.length > 0;
  return isWordsOnly
    ? { ...learnt, head: before.head, thresholds: before.thresholds, figures: before.figures, words }
    : { ...learnt, words };
}
