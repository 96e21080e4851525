/**
 * The wash or rub timer: counts only milliseconds that were witnessed, says every ten seconds aloud, and is done at
 * its time and never before. A gap nobody watched starts it again. It holds no clock of its own.
 */
import { type HandMethod, neededMs } from "./durations";

export type HandTimer = {
  readonly method: HandMethod;
  readonly neededMs: number;
  /** Witnessed without a gap since the last start. */
  readonly creditedMs: number;
  readonly state: "running" | "done" | "stopped";
};

export type HandWords =
  | { readonly code: "count"; readonly seconds: number }
  | { readonly code: "done"; readonly method: HandMethod }
  | { readonly code: "start-again" }
  | { readonly code: "short"; readonly shortS: number };

export type HandStep = { readonly timer: HandTimer; readonly say: readonly HandWords[] };

/** More than this between two ticks was not watched: a sleep, a reload, a stalled page. */
export const mostTickMs = 2000;

const countEveryMs = 10_000;

/** @param ms asks for longer than the default; shorter than the default is not offered. */
export function startTimer(method: HandMethod, ms = 0): HandTimer {
  return { method, neededMs: Math.max(neededMs[method], ms), creditedMs: 0, state: "running" };
}

/** @param sinceLastMs monotonic milliseconds since the last tick. Time that runs back, or a gap, credits nothing. */
export function witness(timer: HandTimer, sinceLastMs: number): HandStep {
  if (timer.state !== "running") return { timer, say: [] };
  if (!(sinceLastMs >= 0 && sinceLastMs <= mostTickMs))
    return { timer: { ...timer, creditedMs: 0 }, say: timer.creditedMs > 0 ? [{ code: "start-again" }] : [] };
  const creditedMs = timer.creditedMs + sinceLastMs;
  if (creditedMs >= timer.neededMs)
    return { timer: { ...timer, creditedMs, state: "done" }, say: [{ code: "done", method: timer.method }] };
  const before = Math.floor(timer.creditedMs / countEveryMs);
  const now = Math.floor(creditedMs / countEveryMs);
  return { timer: { ...timer, creditedMs }, say: now > before ? [{ code: "count", seconds: now * 10 }] : [] };
}

/** Stopped by hand. What happened is kept as it was: short, and by how much (whole seconds, rounded up). */
export function stop(timer: HandTimer): HandStep {
  if (timer.state !== "running") return { timer, say: [] };
  const shortS = Math.ceil((timer.neededMs - timer.creditedMs) / 1000);
  return { timer: { ...timer, state: "stopped" }, say: [{ code: "short", shortS }] };
}

/** Does this count as hand hygiene before gloves? Only when the whole time was witnessed. */
export function countsAsHygiene(timer: HandTimer): boolean {
  return timer.state === "done";
}

/** What the screen shows: seconds left (rounded up) and the share done, 0 to 1. */
export function timerView(timer: HandTimer): { readonly leftS: number; readonly share: number } {
  const leftMs = Math.max(0, timer.neededMs - timer.creditedMs);
  return { leftS: Math.ceil(leftMs / 1000), share: Math.min(1, timer.creditedMs / timer.neededMs) };
}

/** English words for the voice. */
export function sayHands(words: HandWords): string {
  switch (words.code) {
    case "count":
      return String(words.seconds);
    case "done":
      return words.method === "wash" ? "Washed. Dry with a fresh towel." : "Rubbed. Let them dry.";
    case "start-again":
      return "I lost count. Start again.";
    case "short":
      return `${words.shortS} seconds short.`;
  }
}
