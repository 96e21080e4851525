/** What the flows of events share: what differs between stations, and the steps that come back in several flows. */
import type { Effect, Step } from "../protocol";
import type { HandHygiene } from "./hands";
import { type Both, backToTheSkin, discard, must, open } from "./writing";

/** What differs between stations. */
export interface EventKit {
  /** Between gloves while the hands are not visibly soiled. */
  readonly hygiene: HandHygiene;
  /** With soap and water, wherever the sink is. */
  readonly wash: HandHygiene;
  /** What a working hand holds: the machine and what sits in it. */
  readonly held: readonly string[];
  /** The same with the second machine. */
  readonly heldSecond: readonly string[];
  /** What is held once a needle is parked and another fitted. */
  readonly heldAfterPark: readonly string[];
  /** Sterile parts, opened at set-up, that meet blood only with the second needle. */
  readonly secondTip: readonly string[];
  readonly covered: readonly string[];
  readonly droppable: readonly string[];
  readonly touchable: readonly string[];
  readonly words: {
    readonly intoSharps: Both;
    readonly openNew: Both;
    readonly park: Both;
    readonly takeUp: Both;
    readonly swapIn: Both;
  };
}

/** Back to the skin: nobody takes gloves for clean that are at work again. */
export const goOn = (id: string, ...does: Effect[][]): Step =>
  backToTheSkin(id, {
    say: ["Go on. Your gloves count as soiled again.", "Continúa. Tus guantes vuelven a contar como sucios."],
    show: ["Back to the skin", "De vuelta a la piel"],
    does,
    sec: 5,
  });

export const needleIntoSharps = (id: string, { words }: EventKit): Step =>
  must(id, {
    say: words.intoSharps,
    show: ["Needle into sharps", "Aguja al contenedor"],
    caution: ["Never recap, bend or hand it over.", "No la reencapuches, dobles ni pases en mano."],
    does: [discard("sharps", "needle")],
  });

export const openNeedle = (id: string, { words }: EventKit): Step =>
  must(id, {
    say: words.openNew,
    show: ["Open a new needle", "Abrir aguja nueva"],
    caution: ["Sealed, dry and in date, or take another.", "Sellada, seca y vigente; si no, toma otra."],
    does: [open("needle")],
    sec: 20,
  });
