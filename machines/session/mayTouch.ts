/**
 * "May I touch the lamp?" Looked up, nothing changes: would this touch soil the thing, the gloves or hands, or end the
 * time of a wet surface? In doubt the answer is no. The same look at hands and covers as the station's own `touch`.
 */
import type { RefusalReason } from "../../src/session/fact";
import { isGloved, isSoiledOutside } from "../../src/session/station";
import { flowHere, indexHere, stepsHere } from "../../src/session/world";
import type { Told } from "./statements";

export type TouchReason = Extract<
  RefusalReason,
  "unknownItem" | "outOfUse" | "wetClockRuns" | "glovesSoiled" | "handsNotWashed" | "glovesFirst" | "itemSoiled"
>;

export type TouchAnswer =
  | { readonly may: true; readonly because: "clean" | "covered" | "bothSoiled" }
  | { readonly may: false; readonly reason: TouchReason };

const no = (reason: TouchReason): TouchAnswer => ({ may: false, reason });
const yes = (because: "clean" | "covered" | "bothSoiled"): TouchAnswer => ({ may: true, because });

export function mayTouch(told: Told, id: string | null): TouchAnswer {
  const { station, clocks } = told.world;
  const item = id === null ? undefined : station.items[id];
  const clock = id === null ? undefined : clocks[id];
  if (!item) return no("unknownItem");
  if (item.at === "discarded" || item.at === "reprocess" || item.at === "taggedOut") return no("outOfUse");
  if (clock && clock.state !== "ready" && clock.state !== "dry") return no("wetClockRuns");
  const { hands } = station;
  if (isGloved(hands) && glovesAreDue(told)) return no("glovesSoiled");
  if (hands === "bare") return no("handsNotWashed");
  // Its time is full: until it is wiped the fold still calls it soiled, and soiled gloves would begin it anew.
  const isDisinfected = clock?.state === "ready";
  const isSoiled = isSoiledOutside(item) && !isDisinfected;
  if (hands === "glovedSoiled") {
    if (isSoiled) return yes("bothSoiled");
    return item.barrier === "covered" ? yes("covered") : no("glovesSoiled");
  }
  if (isSoiled) return no("itemSoiled");
  if (hands === "washed" && item.condition === "sterile" && item.opened) return no("glovesFirst");
  return yes("clean");
}

/** A flow or the resuming is being walked that has yet to take these gloves off. */
function glovesAreDue({ input, world }: Told): boolean {
  if (flowHere(world) === null && world.place?.list !== "resuming") return false;
  return stepsHere(input, world)
    .slice(indexHere(world))
    .some((step) => step.effects.some((e) => e.verb === "doff"));
}
