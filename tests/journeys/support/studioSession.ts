/** A short invented session that takes a needle and a pack from the studio's shelf, and wets a chair at its beginning. */
import { Protocol } from "../../../src/session/protocol";
import { smallProtocol } from "../../support/smallProtocol";

const own = (id: string, effect: Protocol["setUp"][number]["effects"][number]) => ({
  ...{ id, say: { en: `Do ${id}` }, show: { en: id }, effects: [effect], skippable: false },
});

export const studioProtocol: Protocol = Protocol.parse({
  ...smallProtocol,
  id: "studio",
  name: { en: "Studio test" },
  setUp: [
    ...smallProtocol.setUp.filter(({ id }) => id === "washHands" || id === "putGlovesOn"),
    own("cleanChair", { verb: "preClean", item: "chair" }),
    own("wetChair1", { verb: "apply", item: "chair", product: "spray" }),
    ...smallProtocol.setUp.filter(({ id }) => id === "openNeedle"),
    own("lookAround", { verb: "touch", item: "cup" }),
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
