/** Who speaks next, who is replaced, who waits. Pure functions over the memory. */
import { bookFor } from "../../src/announcements/phrasebooks";
import { together } from "../../src/announcements/together";
import type { Utterance } from "../../src/announcements/utterance";
import { type AnnouncingMemory, gatherMs, holdMs, hushMs, type Ms, pauseMs, type Waiting } from "./vocabulary";

type Change = Partial<AnnouncingMemory>;

/** Moving on makes the reading of where we were pointless. */
const alsoReplaced: Readonly<Record<string, readonly string[]>> = {
  phase: ["step"],
  exposure: ["step", "question", "phase"],
};

const rank = { now: 0, soon: 1, whenQuiet: 2 } as const;

const itemsOf = (utterance: Utterance): readonly string[] =>
  utterance.merge === undefined ? [] : utterance.parts.flatMap((part) => (part.kind === "item" ? [part.id] : []));

/** The newest word on a key, or on a surface's clock, is the one that stands. */
function isReplaced(old: Utterance, fresh: readonly Utterance[]): boolean {
  const byKey = fresh.some(({ key }) => key === old.key || alsoReplaced[key]?.includes(old.key));
  const told = new Set(fresh.flatMap(itemsOf));
  const surfaces = itemsOf(old);
  return byKey || (surfaces.length > 0 && surfaces.every((id) => told.has(id)));
}

export function enqueue({ waiting, speaking }: AnnouncingMemory, fresh: readonly Utterance[]): Change {
  return {
    waiting: [
      ...waiting.filter(({ utterance }) => !isReplaced(utterance, fresh)),
      ...fresh.map((utterance) => ({ utterance, waitedMs: 0 })),
    ],
    speaking: speaking && { ...speaking, obsolete: speaking.obsolete || isReplaced(speaking.utterance, fresh) },
  };
}

export const withdraw = ({ waiting, speaking }: AnnouncingMemory, key: string): Change => ({
  waiting: waiting.filter(({ utterance }) => utterance.key !== key),
  speaking: speaking && { ...speaking, obsolete: speaking.obsolete || speaking.utterance.key === key },
});

/** Clocks that run backwards count as nothing. */
export function pass({ waiting, speaking, quietMs }: AnnouncingMemory, elapsedMs: Ms): Change {
  const ms = Math.max(0, elapsedMs);
  return {
    waiting: waiting.map((each) => ({ ...each, waitedMs: each.waitedMs + ms })),
    speaking: speaking && { ...speaking, forMs: speaking.forMs + ms },
    quietMs: quietMs + ms,
  };
}

const mayBeSaid = ({ utterance, waitedMs }: Waiting, isPause: boolean): boolean => {
  if (waitedMs < 0) return false;
  if (utterance.merge !== undefined && !utterance.solicited && waitedMs < gatherMs) return false;
  return utterance.urgency !== "whenQuiet" || isPause || waitedMs >= holdMs;
};

/** @returns the next to say, or null while all must wait. */
export function nextOf({ waiting, isTalk, quietMs }: AnnouncingMemory): Waiting | null {
  const isPause = !isTalk && quietMs >= pauseMs;
  const ready = waiting.filter((each) => mayBeSaid(each, isPause));
  return ready.toSorted((a, b) => rank[a.utterance.urgency] - rank[b.utterance.urgency])[0] ?? null;
}

/** Takes the next from the queue, and with it all that falls together with it. */
export function take(memory: AnnouncingMemory): Change {
  const next = nextOf(memory);
  if (next === null) return {};
  const moment = next.utterance.merge;
  const joins = (each: Waiting): boolean => each === next || (moment !== undefined && each.utterance.merge === moment);
  const joined = memory.waiting.filter(joins).map(({ utterance }) => utterance);
  const utterance = together(bookFor(memory.language), joined)[0] ?? next.utterance;
  const turn = memory.turn + 1;
  return {
    waiting: memory.waiting.filter((each) => !joins(each)),
    speaking: { turn, utterance, forMs: 0, obsolete: false },
    last: utterance,
    turn,
  };
}

/** Somebody must be warned this moment, and what sounds now can wait. */
export const mustGiveWay = ({ waiting, speaking }: AnnouncingMemory): boolean =>
  speaking !== null &&
  speaking.utterance.urgency !== "now" &&
  waiting.some(({ utterance, waitedMs }) => utterance.urgency === "now" && waitedMs >= 0);

/** Interrupted, it is said again from its beginning, before the others. */
export const putBack = ({ waiting, speaking }: AnnouncingMemory): Change =>
  speaking ? { waiting: [{ utterance: speaking.utterance, waitedMs: holdMs }, ...waiting], speaking: null } : {};

/** What nobody asked for is a warning: a clock, a finding, the ear. So is what interrupts. */
const matters = ({ urgency, solicited }: Utterance): boolean => urgency === "now" || !solicited;

/** Silence now. Warnings are said again from their beginning a little later; what can be asked for again is dropped. */
export function hush({ waiting, speaking }: AnnouncingMemory): Change {
  const told = [...(speaking ? [speaking] : []), ...waiting].map(({ utterance }) => utterance);
  return { waiting: told.filter(matters).map((utterance) => ({ utterance, waitedMs: -hushMs })), speaking: null };
}

/** The last again, as an answer. */
export function repeat(memory: AnnouncingMemory): Change {
  if (memory.last === null) return {};
  return enqueue(memory, [{ ...memory.last, urgency: "soon", solicited: true }]);
}
