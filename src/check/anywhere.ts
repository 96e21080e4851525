/**
 * What is not walked: slips with a name, going back, odd reports, flows within flows, a session ended by an accident.
 * For these, anything at all may be so. For each effect, whatever hands and thing are, a finding means that the chart
 * holds the step back and says why (machines/session/statements, standsInTheWay), or that its wet clock does.
 */
import { isHeldBack } from "../../machines/session/statements";
import type { DeviationCode } from "../session/fact";
import { type Effect, everyStep, type Item, type Protocol } from "../session/protocol";
import { applyEffect, type ItemState, type Station } from "../session/station";
import { skinRules } from "../session/transfer";
import { ruleOf } from "./rules";
import type { Why } from "./why";

/** A wipe before its time is answered with the question, or with the time that is left (conversation: wipesEarly). */
const heldByTheClock: ReadonlySet<DeviationCode> = new Set(["neverWet", "wipedEarly"]);

const hands = ["bare", "washed", "glovedClean", "glovedSoiled"] as const;
const origins = [[], ["client"], ["floor"]] as const;
const conditions = ["sterile", "clean", "soiled"] as const;
const barriers = ["none", "covered", "soiledCover", "torn"] as const;
const places = ["station", "away", "discarded", "reprocess", "taggedOut"] as const;

const anyItem: readonly ItemState[] = conditions.flatMap((condition) =>
  barriers.flatMap((barrier) =>
    places.flatMap((at) =>
      [false, true].flatMap((opened) =>
        origins.map((soiledBy) => ({ condition, barrier, at, opened, soiledBy, preCleaned: false })),
      ),
    ),
  ),
);

const known = new Map<string, readonly DeviationCode[]>();

/** Every finding that an effect of this kind can have on a thing of this kind, whatever is so. */
function findingsOf(effect: Effect, item: Item | null): readonly DeviationCode[] {
  const into = effect.verb === "discard" ? effect.into : "";
  const key = `${effect.verb} ${into} ${item?.role} ${item?.spaulding} ${item?.use} ${item?.porous}`;
  const before = known.get(key);
  if (before) return before;
  const codes = new Set<DeviationCode>();
  const kinds = item ? { [item.id]: item } : {};
  for (const h of hands) {
    for (const handsSoiledBy of origins) {
      for (const state of item ? anyItem : [null]) {
        const items: Station["items"] = item && state ? { [item.id]: state } : {};
        for (const f of applyEffect({ hands: h, handsSoiledBy, items }, effect, kinds).findings) codes.add(f.code);
      }
    }
  }
  // What a thing breaks is skin in any state, too, whatever the thing is.
  if (effect.verb === "breakSkin") {
    for (const state of anyItem) for (const { code, when } of skinRules) if (when(state)) codes.add(code);
  }
  const made = [...codes];
  known.set(key, made);
  return made;
}

const statesOf = (effect: Effect): number => hands.length * origins.length * ("item" in effect ? anyItem.length : 1);

export type Anywhere =
  | { readonly ok: true; readonly states: number }
  | { readonly ok: false; readonly why: Why; readonly states: number };

export function isHeldBackEverywhere(protocol: Protocol): Anywhere {
  const items = new Map(protocol.items.map((i) => [i.id, i]));
  let states = 0;
  for (const { step } of everyStep(protocol)) {
    for (const effect of step.effects) {
      states += statesOf(effect);
      const found = findingsOf(effect, "item" in effect ? (items.get(effect.item) ?? null) : null);
      const loose = found.find((c) => ruleOf(c) !== null && !isHeldBack(c) && !heldByTheClock.has(c));
      if (loose) return { ok: false, states, why: { code: "notHeldBack", step: step.id, finding: loose } };
    }
  }
  return { ok: true, states };
}
