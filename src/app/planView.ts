/** The forecast as the screen shows it: the line of time, and when that is by the clock of the station. */
import type { PlanView } from "../screen/model";
import { planFace } from "../screen/session/planFace";
import type { Companion } from "./companion";

export function planView({ forecast, state }: Pick<Companion, "forecast" | "state">, wallMs: number): PlanView | null {
  if (!forecast) return null;
  const { input, world, pendingMs } = state.context;
  const face = planFace(forecast, world.witnessedMs + pendingMs);
  const time = new Intl.DateTimeFormat(input.language, { hour: "2-digit", minute: "2-digit", timeZone: input.zone });
  // Rounded up to the minute: a time shown is never too soon.
  const at = (sec: number): string => time.format(Math.ceil((wallMs + sec * 1_000) / 60_000) * 60_000);
  return { face, readyAt: at(face.readyInSec), nextAt: face.nextInSec === null ? null : at(face.nextInSec) };
}
