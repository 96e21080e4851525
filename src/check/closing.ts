/** What must be so when the session is closed: hands, and each thing by its class. */
import type { Item } from "../session/protocol";
import { isOpenWound, isSkin } from "../session/skin";
import { type ItemState, isUnready } from "../session/station";
import type { HandState, ThingState } from "./conduct";
import type { RuleId } from "./rules";

export const handsAtClose = (h: HandState): RuleId[] => (h.hands === "washed" ? [] : ["handsLast"]);

/** What the live session would list as not ready, told apart by the rule that it breaks. */
export function thingAtClose(state: ThingState, item: Item): RuleId[] {
  const live: ItemState = { ...state, soiledBy: [] };
  if (isSkin(item)) return isOpenWound(live) ? ["woundCovered"] : [];
  if (state.wetness !== "none") return ["wipedAtTheEnd"];
  // Out of use, the next set-up begins with it: no client meets it as it is.
  if (state.at === "taggedOut") return [];
  if (!isUnready(live, item)) return [];
  if (item.use === "singleUse" && state.at === "station") return ["singleUseDiscarded"];
  if (state.condition !== "soiled") return ["noBarrierLeft"];
  return [item.spaulding === "critical" ? "criticalSterilised" : "reusableReady"];
}
