/**
 * The recorded artist at work: told by the plan what to say, listening to the companion for when to say it. Out comes a
 * timeline of phrases. Played to the real ear, the same timeline must come to the same session.
 */

import { askedBy } from "../announcements/announce";
import type { CommandId } from "../intent/phrases";
import { commands } from "../intent/phrases";
import { SoundActivity } from "../recogniser/soundActivity";
import { stepHere } from "../session/world";
import { nextWish, nothingTold, type Plan, type Told, type Wish } from "./artist";
import { forgetSettled, isUnasked, momentsAhead } from "./moments";
import type { Room } from "./room";

export interface Label {
  readonly command: CommandId;
  readonly words: string;
  /** First and last sound of the phrase, milliseconds from the beginning of the recording. */
  readonly startMs: number;
  readonly endMs: number;
}

/** The sound in the room, made while the session goes on. */
export interface Air {
  readonly rateHz: number;
  /** The artist begins to say it now. @returns how long it lasts, milliseconds. */
  say(command: CommandId): number;
  /** The next so many samples, mono, -1..1. */
  take(count: number): Float32Array;
}

export interface Pace {
  /** Silence before the first phrase, for a session that begins later than the sound. */
  readonly leadInMs: number;
  /** After the companion's last word, whatever it was. */
  readonly marginMs: number;
  /** Then a gap of a person's: between the first and the second. Common in talk; our choice. */
  readonly gapMs: readonly [number, number];
  /** No phrase ends less than this before a wet clock speaks up, so that nobody can doubt which question it answers. */
  readonly clearMs: number;
  /** Steps take their hands-on time; without it everything is answered promptly, so that a recording stays short. */
  readonly handsOn: boolean;
}

/** For recordings, which may be played where announcements begin a little later than here. */
export const recordedPace: Pace = {
  leadInMs: 6_000,
  marginMs: 1_500,
  gapMs: [200, 500],
  clearMs: 5_000,
  handsOn: false,
};

const stepMs = 80;
/** The ear's answer comes about so long after the phrase has ended. */
const hearingMs = 240;
const tailMs = 6_000;
/** Nothing more to say for so long means that artist and companion wait for each other. */
const longestMs = 3_600_000;

/** Rejects where the plan cannot be carried through: a mistake in the plan or in the chart. */
export async function act(
  room: Room,
  air: Air,
  plan: Plan,
  pace: Pace,
  random: () => number,
): Promise<readonly Label[]> {
  const labels: Label[] = [];
  const activity = new SoundActivity(air.rateHz);
  let told: Told = nothingTold;
  let gapMs = drawn(pace.gapMs, random);
  let quietSinceMs = 0;
  const asked = new Map<string, string>();
  let wished = { about: "", sinceMs: 0 };

  room.onSpoken((utterance) => {
    const question = askedBy(utterance);
    for (const surface of question?.surfaces ?? []) asked.set(surface, question?.about ?? "");
  });

  const pass = async (ms: number): Promise<void> => {
    for (const untilMs = room.nowMs + ms; room.nowMs < untilMs; ) {
      await room.pass(stepMs);
      for (const change of activity.take(air.take(Math.round((air.rateHz * stepMs) / 1000)))) {
        if (change === "speechstart" || change === "speechend") await room.talk(change === "speechstart");
      }
    }
  };

  const speak = async (wish: Extract<Wish, { does: "speak" }>): Promise<void> => {
    const { command } = wish;
    if (!room.companion.listenedFor.has(command))
      throw new Error(`"${command}" would not be listened for at ${Math.round(room.nowMs)} ms`);
    const startMs = room.nowMs;
    const endMs = startMs + air.say(command);
    labels.push({ command, words: `station ${commands[command]}`, startMs, endMs: Math.round(endMs) });
    await pass(endMs + hearingMs - startMs);
    await room.hear({
      kind: "understood",
      address: room.companion.state.context.input.address,
      command,
      confidence: 1,
      permitted: true,
      atMs: room.nowMs,
    });
    told = wish.told;
    gapMs = drawn(pace.gapMs, random);
    quietSinceMs = room.nowMs;
  };

  /** Since when the artist has been at this. */
  const wishedSince = ({ command }: Extract<Wish, { does: "speak" }>): number => {
    const { input, world, asked } = room.companion.state.context;
    const about = `${command} ${stepHere(input, world)?.id} ${asked?.surfaces.join(" ")}`;
    if (wished.about !== about) wished = { about, sinceMs: room.nowMs };
    return wished.sinceMs;
  };

  const isMyTurn = (): boolean => {
    const { nowMs, silentSinceMs } = room;
    if (silentSinceMs === null) return false;
    const waitMs = labels.length === 0 ? pace.leadInMs : pace.marginMs + gapMs;
    return nowMs - Math.max(silentSinceMs, quietSinceMs) >= waitMs;
  };

  for (;;) {
    await pass(stepMs);
    forgetSettled(room.companion.state, asked);
    if (room.nowMs - quietSinceMs > longestMs) throw new Error(`nothing happens any more at ${room.nowMs} ms`);
    if (!isMyTurn()) continue;
    const { state } = room.companion;
    const wish = nextWish(state, plan, told);
    if (wish.does === "leave") break;
    if (wish.does === "wait") continue;
    if (pace.handsOn && room.nowMs - wishedSince(wish) < wish.handsOnMs) continue;
    const lengthMs = phraseMs(wish.command);
    if (isUnasked(state, asked) || momentsAhead(state).some((ms) => ms < lengthMs + pace.clearMs)) continue;
    await speak(wish);
  }
  await pass(tailMs);
  return labels;
}

const drawn = ([from, to]: readonly [number, number], random: () => number): number => from + (to - from) * random();

/** About what it takes to say it: 2.6 words a second, from the synthetic voices. */
export const phraseMs = (command: CommandId): number => 600 + commands[command].length * 65;
