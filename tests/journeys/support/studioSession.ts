/** A short invented session that takes a needle and a pack from the studio's shelf, and wets a chair at its beginning. */
import { Protocol, type Step } from "../../../src/session/protocol";
import { provedSmall } from "./provedSmall";

const own = (id: string, effect: Protocol["setUp"][number]["effects"][number]) => ({
  ...{ id, say: { en: `Do ${id}` }, show: { en: id }, effects: [effect], skippable: false },
});

const step = (list: readonly Step[], id: string): Step[] => list.filter((one) => one.id === id);
const { setUp } = provedSmall;

/** Proved, or Prepare would not offer it. */
export const studioProtocol: Protocol = Protocol.parse({
  ...provedSmall,
  id: "studio",
  name: { en: "Studio test" },
  setUp: [
    ...["washHands", "bottleAway", "putGlovesOn", "openNeedle"].flatMap((id) => step(setUp, id)),
    own("cleanChair", { verb: "preClean", item: "chair" }),
    own("wetChair1", { verb: "apply", item: "chair", product: "spray" }),
    own("studioOff", { verb: "doff" }),
    own("studioWash", { verb: "wash" }),
    own("studioOn", { verb: "don" }),
    own("wipeChair1", { verb: "wipe", item: "chair" }),
  ],
});

/** A cycle as a machine writes it: a rise, a hold at 135 °C of four minutes in saturated steam, a fall. */
export const heldCsv = [
  "time_min,temperature_c,pressure_bar_gauge",
  ...[90, 105, 120, 130].map((celsius, i) => `${i / 2},${celsius},1.0`),
  ...Array.from({ length: 9 }, (_, i) => `${2 + i / 2},135.0,2.11`),
  ...[120, 100, 80].map((celsius, i) => `${6.5 + i / 2},${celsius},0.5`),
].join("\n");

/** The same with one reading of the hold below the band: a large F0, and not held. */
export const brokenCsv = heldCsv.replace("4,135.0", "4,133.5");
