/**
 * The client's skin is a thing like any other, and never a surface: antiseptic goes on and dries as its label says, with no
 * clock; from the first line on it is a wound, which is covered before the client leaves. What lies on it leaves with the
 * client. A protocol may name several places; each has to be prepared.
 */
import type { ItemState, Kinds, Station } from "./contact";
import { put } from "./contact";
import type { Item } from "./protocol";

export const isSkin = (kind: Pick<Item, "role"> | undefined): boolean => kind?.role === "skin";

/** Antiseptic went on, and nothing soiled it since. A wound is not prepared anew: it is rinsed and covered. */
export const antisepticOn = (station: Station, id: string): Station =>
  put(station, id, { condition: "clean", preCleaned: true, soiledBy: [] });

/** The first line would go through skin that had no antiseptic. Of a wound it says nothing more. */
export const isUnprepared = (skin: ItemState): boolean => !skin.opened && !skin.preCleaned;

/** It is a wound now. A needle goes through no cover, so none is there any more. */
export const broken = (skin: ItemState, by: Pick<Item, "role">): ItemState => ({
  ...skin,
  opened: true,
  barrier: by.role === "sharp" ? "none" : skin.barrier,
});

export const isOpenWound = (skin: ItemState): boolean =>
  skin.opened && (skin.barrier === "none" || skin.barrier === "torn");

export const skinsIn = (kinds: Kinds): string[] => Object.keys(kinds).filter((id) => isSkin(kinds[id]));

/** Skin is broken with this thing, wherever it is. */
export const allBroken = (station: Station, kinds: Kinds, by: Item): Station =>
  skinsIn(kinds).reduce((s, id) => {
    const skin = s.items[id];
    return skin ? put(s, id, broken(skin, by)) : s;
  }, station);
