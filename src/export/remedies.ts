/**
 * What was done about a deviation, as far as the facts tell: the first thing after it that put right what it was about.
 * Nothing here is a judgement that it was enough; where no fact tells, nothing is said.
 */
import type { Summary } from "../log";
import type { DeviationCode, SessionFact } from "../session/fact";
import type { ItemState } from "../session/station";
import type { World } from "../session/world";

export type Remedy = NonNullable<NonNullable<Summary["deviations"][number]["done"]>>;

type Seen = { n: number; fact: SessionFact; before: World; after: World };
type About = { code: DeviationCode; item: string | null; step: string | null };

/** Put right on the hands, not on an item. Gloves are never washed: clean hands mean that the gloves came off. */
const ofHands: ReadonlySet<DeviationCode> = new Set([
  "touchedWithUnwashedHands",
  "glovesOverUnwashedHands",
  "glovesOverGloves",
  "washedInGloves",
  "skinBrokenWithoutGloves",
  "gloveTorn",
]);

/** @returns what this fact puts right of it, or null. Pure. */
export function remedyIn({ code, item, step }: About, { n, fact, before, after }: Seen): Remedy | null {
  // Why it differs stands beside the sharps; only a count that comes out puts it right.
  if (code === "sharpsMismatch") {
    return fact.type === "v1.SharpsCounted" && fact.inContainer === fact.expected ? { what: "recounted", n } : null;
  }
  if (code === "stepLeftOut")
    return fact.type === "v1.StepDone" && fact.step === step ? { what: "doneLater", n } : null;
  const about = item !== null && !ofHands.has(code) ? itemRemedy(item, fact, before, after) : null;
  if (about) return { what: about, n };
  if (!ofHands.has(code)) return null;
  const washed = after.station.hands === "washed" && before.station.hands !== "washed";
  return washed ? { what: "handsWashed", n } : null;
}

function itemRemedy(item: string, fact: SessionFact, before: World, after: World): Remedy["what"] | null {
  const [was, is] = [before.station.items[item], after.station.items[item]];
  if (!was || !is) return null;
  if (is.at !== was.at && (is.at === "discarded" || is.at === "reprocess" || is.at === "taggedOut")) return is.at;
  const isWhole = (state: ItemState) => state.barrier === "covered";
  if (was.barrier === "torn" && isWhole(is)) return "coveredAgain";
  return fact.type === "v1.WetClockReady" && fact.surface === item ? "disinfected" : null;
}
