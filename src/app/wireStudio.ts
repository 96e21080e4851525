/** The studio's keeping of this device: its store, the sessions of the log beside it, and the voice. */
import type { SpokenLanguage } from "../announcements/languages";
import { textOf } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import { inputWith, type Journal, madeAtMs } from "../log";
import type { StudioModel, StudioNow } from "../screen/sums/studioModel";
import type { Change } from "../studio/kinds";
import type { KeptRecord } from "../studio/record";
import type { StudioStore } from "../studio/studioStore";
import { answer, type Refusal, refuse, wordsIn } from "../sums/answer";
import { watchedValue } from "./watchedValue";

/** Turns of its own, apart from those of a session and of the prepare screen. */
const firstTurn = 2_000_000;

/**
 * @param voice fetched when something is first said.
 * @param troubleWords why the log does not read, by its code.
 * @param whyLocked what to say where records lie under their lock: a part of them would count wrong. Null where none do.
 */
export function wireStudio(
  store: StudioStore,
  journal: Journal,
  voice: () => Promise<Voice>,
  whyLocked: () => Promise<string | null>,
  troubleWords: (code: string) => string,
  language: () => SpokenLanguage,
): StudioModel {
  const now = watchedValue<StudioNow>({ at: "opening" });
  const saying = watchedValue<string | null>(null);
  let undo: { act: string; changes: readonly Change[] } | null = null;
  let turn = firstTurn;

  /** Other languages come with the pages; where they cannot be fetched, English says it. */
  const inWords = async (refusal: Refusal<string>): Promise<string> => {
    try {
      return wordsIn(refusal, (await import("../sums/phrases")).sumPhrases(language()));
    } catch {
      return refusal.words;
    }
  };
  const read = async (): Promise<void> => {
    const found = await store.read();
    now.set(
      found.ok ? { at: "open", ...found.value, undo: undo?.act ?? null } : { at: "lost", words: await inWords(found) },
    );
  };
  const write = async (act: string | null, changes: readonly Change[]): Promise<string | null> => {
    const kept = await store.keep(changes);
    if (kept.ok) undo = act === null ? null : { act, changes: kept.value };
    await read();
    return kept.ok ? null : inWords(kept);
  };

  let speaker: Voice | null = null;
  const speakerHere = async (): Promise<Voice> => {
    const found = await voice();
    if (speaker === null) {
      speaker = found;
      found.onEnded((ended) => {
        if (ended === turn) saying.set(null);
      });
    }
    return speaker;
  };
  void read();
  // Another window of this device may have kept something meanwhile.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") void read();
  });

  return {
    get now() {
      return now.now;
    },
    get saying() {
      return saying.now;
    },
    subscribe(listen) {
      const stops = [now.subscribe(listen), saying.subscribe(listen)];
      return () => {
        for (const stop of stops) stop();
      };
    },
    keep: write,
    async keepQuietly(changes) {
      const kept = await store.keep(changes);
      // Taking back the act before would write over what was typed since.
      const isOver = undo?.changes.some((one) => changes.some(({ kind, id }) => one.kind === kind && one.id === id));
      if (kept.ok && isOver) undo = null;
      await read();
      return kept.ok ? null : inWords(kept);
    },
    undo: async () => (undo ? write(null, undo.changes) : null),
    async sessions() {
      const locked = await whyLocked();
      if (locked !== null) return refuse("records-locked", locked);
      const listed = await journal.all();
      if (!listed.ok) return refuse(listed.code, troubleWords(listed.code));
      return answer(
        listed.sessions.map(({ session, client }) => ({
          session,
          atMs: madeAtMs(session),
          clientReference: "reference" in client ? client.reference : null,
        })),
      );
    },
    async records(sinceMs) {
      const locked = await whyLocked();
      if (locked !== null) return refuse("records-locked", locked);
      const listed = await journal.all();
      if (!listed.ok) return refuse(listed.code, troubleWords(listed.code));
      const records: KeptRecord[] = [];
      for (const { session, header, client } of listed.sessions) {
        const atMs = madeAtMs(session);
        if (atMs < sinceMs) continue;
        const found = await journal.read(session);
        if (!found.ok) return refuse(found.code, troubleWords(found.code));
        records.push({
          session,
          atMs,
          input: inputWith(header, client),
          facts: found.kept.entries.map(({ fact }) => fact),
        });
      }
      return answer(records);
    },
    say(parts) {
      turn += 1;
      const mine = turn;
      saying.set(textOf({ parts }));
      // What is hushed or overtaken meanwhile is not said; the words stay on the screen where there is no voice.
      void speakerHere().then(
        (here) => mine === turn && saying.now !== null && here.speak(mine, { parts }),
        () => undefined,
      );
    },
    hush() {
      saying.set(null);
      speaker?.stop();
    },
  };
}
