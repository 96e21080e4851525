/** Records for the tests of paper and of hand-over, made by the real chart: an ordinary one, a long one, a hostile one. */

import type { RecordFile } from "../../src/export/recordFile";
import { live } from "../../src/export/samples/lived";
import { type Day, quietDay, walked } from "../../src/export/samples/walked";
import { sealRecord } from "../../src/export/sealRecord";
import { newSigner, type Signer } from "../../src/log";
import { Protocol } from "../../src/session/protocol";
import { protocolById } from "../../src/session/protocols";
import type { SessionInput } from "../../src/session/sessionInput";
import { inputFor, today } from "./session";
import { smallProtocol } from "./smallProtocol";

export async function sealedRecord(
  input: SessionInput,
  day: Partial<Day> = quietDay,
  signer?: Signer,
): Promise<{ record: RecordFile; text: string }> {
  const by = signer ?? (await newSigner());
  const { journal, writer } = await live(input, walked(input, today, day), by);
  const sealed = await sealRecord(journal, writer, by, "2026-11-25T18:00:00.000+00:00");
  if (!sealed.ok) throw new Error(sealed.message);
  return sealed;
}

/** The largest bundled protocol, on a day with much to tell and one cartridge lost. */
export function busyDay(): { input: SessionInput; day: Partial<Day> } {
  const protocol = protocolById("cartridgeMachine");
  if (!protocol) throw new Error("no such protocol");
  const lots = protocol.items
    .filter((item) => item.hasLot)
    .map((item, at) => ({ item: item.id, lot: `L-${100 + at}`, expiry: "2028-05-31", known: "typed" as const }));
  const surface = protocol.items.find((item) => item.role === "surface")?.id ?? "";
  return {
    input: inputFor(protocol, { lots }),
    day: {
      atWork: [
        { type: "event.reported", event: "newNeedle" },
        { type: "event.reported", event: "touched", item: surface },
        { type: "event.reported", event: "freshGloves" },
        { type: "event.reported", event: "takeBreak" },
        ...Array.from({ length: 30 }, () => ({ type: "step.problem" }) as const),
      ],
      secondsBetween: 90,
      missing: 1,
    },
  };
}

const markup = `<img src=x onerror="globalThis.hurt=1"><script>globalThis.hurt=1</script>"'&`;

/** HTML in every text that a person may enter. */
export function hostileInput(): SessionInput {
  const evil = { en: markup };
  const step = <T extends { say: object; show: object }>(one: T) => ({ ...one, say: evil, show: evil, caution: evil });
  const protocol = Protocol.parse({
    ...smallProtocol,
    name: evil,
    about: evil,
    items: smallProtocol.items.map((item) => ({ ...item, name: evil, calledAs: evil })),
    products: smallProtocol.products.map((slot) => ({ ...slot, label: { ...slot.label, name: evil } })),
    setUp: smallProtocol.setUp.map(step),
    dressing: smallProtocol.dressing.map(step),
    breakdown: smallProtocol.breakdown.map(step),
  });
  return inputFor(protocol, {
    station: markup.slice(0, 60),
    artist: markup.slice(0, 80),
    clientReference: markup.slice(0, 60),
    zone: markup.slice(0, 60),
    lots: [{ item: "needle", lot: markup.slice(0, 40), expiry: null, known: "typed" }],
  });
}
