/** The forecast as the screen shows it: the line of time, and when that is by the clock of the station. */
import type { PlanView } from "../screen/model";
import { planFace } from "../screen/session/planFace";
import type { Companion } from "./companion";

export function planView({ forecast, state }: Pick<Companion, "forecast" | "state">, wallMs: number): PlanView | null {
  if (!forecast) return null;
  const { input, world, pendingMs } = state.context;
  const face = planFace(forecast, world.witnessedMs + pendingMs);
  const time = timeIn(input.language, input.zone);
  // Rounded up to the minute: a time shown is never too soon.
  const at = (sec: number): string => time.format(Math.ceil((wallMs + sec * 1_000) / 60_000) * 60_000);
  return { face, readyAt: at(face.readyInSec), nextAt: face.nextInSec === null ? null : at(face.nextInSec) };
}

const times = new Map<string, Intl.DateTimeFormat>();

/** Kept: asked for at every second, and slow to make. */
function timeIn(language: string, zone: string): Intl.DateTimeFormat {
  const key = `${language} ${zone}`;
  const made =
    times.get(key) ?? new Intl.DateTimeFormat(language, { hour: "2-digit", minute: "2-digit", timeZone: zone });
  times.set(key, made);
  return made;
}
