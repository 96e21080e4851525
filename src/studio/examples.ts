/** An invented studio for tests: one steriliser, cycles, packs, and sessions of the bundled protocol that used them. */

import { SessionFact } from "../session/fact";
import { cartridgeMachine } from "../session/protocols/cartridge";
import type { Lot, SessionInput } from "../session/sessionInput";
import { needle, stockLine } from "../shelf/examples";
import { bandById } from "../steriliser/bands";
import { judgeHandEntry } from "../steriliser/judge";
import { entryVerdict, type SteriliserLogEntry } from "../steriliser/logEntry";
import type { Pack } from "../steriliser/packs";
import type { Of } from "./kinds";
import type { KeptRecord } from "./record";

export const zone = "Europe/Lisbon";
export const hourMs = 3_600_000;
/** 2026-11-25, 09:00 in Lisbon. */
export const morningMs = Date.UTC(2026, 10, 25, 9);

const band = bandById("en-134");
if (!band) throw new Error("en-134 is a band");
const held = judgeHandEntry({ coolestC: 134.5, hottestC: 136, heldMs: 210_000, kPaAbs: null }, band);

export const cycle = (cycleId: string, change: Partial<SteriliserLogEntry> = {}): Of<"cycle"> => ({
  entry: {
    cycleId,
    steriliserId: "A1",
    atMs: morningMs + Number(cycleId.slice(1)) * hourMs,
    cycleClass: "B",
    load: ["wrapped-solid"],
    contents: "grips and tubes",
    operator: "AB",
    verdict: entryVerdict(held),
    integrator: "passed",
    biological: "none",
    afterPositive: "",
    ...change,
  },
  statedByMaker: [],
});

export const pack = (id: string, cycleId: string, change: Partial<Pack> = {}): Pack => ({
  id,
  cycleId,
  contents: "grip",
  wrapped: true,
  packedOn: "2026-11-25",
  initials: "AB",
  expiry: { rule: "event" },
  events: [],
  ...change,
});

export const needles = (id: string, lot: string, quantity: number, countedAtMs = morningMs): Of<"stock"> => ({
  line: { ...stockLine({ id, lot, quantity }), productId: needle.id },
  countedAtMs,
});

const stepThatOpens = (item: string): string =>
  cartridgeMachine.setUp.find((step) => step.effects.some((e) => e.verb === "open" && e.item === item))?.id ??
  (() => {
    throw new Error(`no step opens ${item}`);
  })();

const inputWith = (lots: readonly Lot[]): SessionInput => ({
  protocol: cartridgeMachine,
  labels: Object.fromEntries(cartridgeMachine.products.map(({ id, label }) => [id, label])),
  lots: [...lots],
  station: "Station 1",
  artist: "Artist A",
  clientReference: "C-001",
  address: "station",
  language: "en",
  zone,
  brisk: false,
  carriedOver: [],
});

/** A session that opened its needle, so many hours after the morning. */
export const sessionAt = (session: string, hours: number, lots: readonly Lot[] = []): KeptRecord => ({
  session,
  atMs: morningMs + hours * hourMs,
  input: inputWith(lots),
  facts: [SessionFact.parse({ type: "v1.StepDone", witnessedMs: 0, cause: 2, step: stepThatOpens("needle") })],
});
