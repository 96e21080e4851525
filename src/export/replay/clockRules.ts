/** Wet clocks: every contact time is recomputed from the label and the time watched. */
import { labelOf, productFor } from "../../../machines/session/lookUp";
import { hasLapsed, isFull, leftMs, owesReapply, type WetClock, wantsReapply } from "../../session/wetClock";
import { breach, type Rule } from "./rule";

const isFree = (clock: WetClock | undefined): boolean => clock === undefined || clock.state === "ready";

const startsByLabel: Rule = ({ input, fact, credited, atCause }) => {
  if (fact.type !== "v1.WetClockStarted") return null;
  const product = productFor(input.protocol, fact.surface);
  const label = product === null ? undefined : labelOf({ input }, product);
  const expected = {
    product,
    neededMs: label ? label.contactSec * 1000 : null,
    reapplyWithinMs: label?.reapplyWithinSec == null ? null : label.reapplyWithinSec * 1000,
  };
  const { neededMs, reapplyWithinMs } = fact;
  const found = { product: fact.product, neededMs, reapplyWithinMs };
  if (JSON.stringify(expected) !== JSON.stringify(found)) return breach("label-differs", expected, found);
  const clock = credited.clocks[fact.surface];
  if (isFree(clock)) return null;
  // The step that wets it touched it with soiled gloves first, which ended the clock that was ready: the new one is at zero.
  const isSpoiltByThis = clock?.state === "dry" && isFree(atCause.clocks[fact.surface]);
  return isSpoiltByThis ? null : breach("clock-state", "none, or ready", clock?.state);
};

const timeIsUp: Rule = ({ fact, credited }) => {
  if (fact.type !== "v1.WetClockTimeUp") return null;
  const clock = credited.clocks[fact.surface];
  if (clock?.state !== "counting") return breach("clock-state", "counting", clock?.state);
  if (clock.creditedMs !== fact.creditedMs) return breach("credit-differs", clock.creditedMs, fact.creditedMs);
  if (!isFull(clock)) return breach("ready-early", `${clock.neededMs} ms`, `${clock.creditedMs} ms`);
  const sinceAppliedMs = clock.sinceAppliedMs - (clock.creditedMs - clock.neededMs);
  const wetToTheEnd = clock.reapplyWithinMs === null || sinceAppliedMs <= clock.reapplyWithinMs;
  return wetToTheEnd ? null : breach("ready-early", `wet within ${clock.reapplyWithinMs} ms`, `${sinceAppliedMs} ms`);
};

/** For each fact about a clock, what the clock must be for it to be so. */
const fits: Partial<Record<string, { expected: string; holds: (clock: WetClock) => boolean }>> = {
  "v1.WetClockReady": { expected: "time up", holds: (c) => c.state === "timeUp" },
  "v1.WetClockTrusted": { expected: "doubtful", holds: (c) => c.state === "doubtful" },
  "v1.WetClockDried": { expected: "doubtful or time up", holds: (c) => c.state === "doubtful" || c.state === "timeUp" },
  "v1.WetClockLapsed": { expected: "past its re-apply time", holds: hasLapsed },
  "v1.ReapplyDue": { expected: "due for re-application", holds: wantsReapply },
  "v1.ReapplyPlanned": { expected: "to be wetted once more", holds: owesReapply },
  "v1.WetClockReapplied": { expected: "running", holds: (c) => c.state !== "ready" },
  "v1.WipedEarly": { expected: "running", holds: (c) => c.state !== "ready" },
  "v1.SurfaceWiped": { expected: "ready", holds: (c) => c.state === "ready" },
};

const fitsItsClock: Rule = ({ fact, credited }) => {
  const need = fits[fact.type];
  if (!need || !("surface" in fact)) return null;
  const clock = credited.clocks[fact.surface];
  return clock && need.holds(clock) ? null : breach("clock-state", need.expected, clock?.state ?? "no clock");
};

/** Between what was left when the event came in and what is left with the time it carries. */
const shortBy: Rule = ({ fact, credited, atCause }) => {
  if (fact.type !== "v1.WipedEarly") return null;
  const now = credited.clocks[fact.surface];
  const then = atCause.clocks[fact.surface] ?? now;
  const leastMs = now ? leftMs(now) : 0;
  const mostMs = Math.max(leastMs, then ? leftMs(then) : 0);
  if (fact.shortByMs >= leastMs && fact.shortByMs <= mostMs) return null;
  return breach("short-by-differs", `${leastMs} to ${mostMs} ms`, `${fact.shortByMs} ms`);
};

export const clockRules: readonly Rule[] = [startsByLabel, timeIsUp, fitsItsClock, shortBy];
