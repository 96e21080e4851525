/** Records for the tests of paper and of hand-over, made by the real chart: an ordinary one, a long one, a hostile one. */

import type { RecordFile } from "../../src/export/recordFile";
import { live } from "../../src/export/samples/lived";
import { type Day, quietDay, walked } from "../../src/export/samples/walked";
import { sealRecord } from "../../src/export/sealRecord";
import { type attachmentOf, newSigner, type Signer } from "../../src/log";
import { Protocol } from "../../src/session/protocol";
import { protocolById } from "../../src/session/protocols";
import type { SessionInput } from "../../src/session/sessionInput";
import { inputFor, today } from "./session";
import { smallProtocol } from "./smallProtocol";

export async function sealedRecord(
  input: SessionInput,
  day: Partial<Day> = quietDay,
  signer?: Signer,
  notes: readonly ReturnType<typeof attachmentOf>[] = [],
): Promise<{ record: RecordFile; text: string }> {
  const by = signer ?? (await newSigner());
  const { journal, writer } = await live(input, walked(input, today, day), by, notes);
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

export const markup = `<img src=x onerror="globalThis.hurt=1"><script>globalThis.hurt=1</script>"'&`;

/** The same protocol with HTML in every text that a person may write into it. */
export function withHtml(plain: Protocol): Protocol {
  const evil = { en: markup };
  const step = <T extends { say: object; show: object }>(one: T) => ({ ...one, say: evil, show: evil, caution: evil });
  return Protocol.parse({
    ...plain,
    name: evil,
    about: evil,
    items: plain.items.map((item) => ({ ...item, name: evil, calledAs: evil })),
    products: plain.products.map((slot) => ({ ...slot, label: { ...slot.label, name: evil } })),
    setUp: plain.setUp.map(step),
    events: plain.events.map((event) => ({ ...event, steps: event.steps.map(step) })),
    dressing: plain.dressing.map(step),
    breakdown: plain.breakdown.map(step),
    resuming: plain.resuming.map(step),
  });
}

/** HTML in every text that a person may enter. */
export function hostileInput(): SessionInput {
  return inputFor(withHtml(smallProtocol), {
    station: markup.slice(0, 60),
    artist: markup.slice(0, 80),
    clientReference: markup.slice(0, 60),
    zone: markup.slice(0, 60),
    lots: [{ item: "needle", lot: markup.slice(0, 40), expiry: null, known: "typed" }],
  });
}
