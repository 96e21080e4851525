/** How each thing that a record claims is known: measured by the device, scanned from a code, or only said by somebody. */
import type { LogEntry, Summary } from "../log";
import type { SessionFact } from "../session/fact";

export const claims = ["contactTimes", "stayedWet", "steps", "events", "sharps", "lots"] as const;
export type Claim = (typeof claims)[number];
export type Counts = { readonly measured: number; readonly scanned: number; readonly said: number };

const claimOf: Partial<Record<SessionFact["type"], Claim>> = {
  "v1.WetClockTimeUp": "contactTimes",
  "v1.WetClockLapsed": "contactTimes",
  "v1.WetClockReady": "stayedWet",
  "v1.WetClockTrusted": "stayedWet",
  "v1.WetClockDried": "stayedWet",
  "v1.StepDone": "steps",
  "v1.StepSkipped": "steps",
  "v1.EventReported": "events",
  "v1.ExposureReported": "events",
  "v1.SharpsCounted": "sharps",
  "v1.LotGiven": "lots",
};

/** @returns a row for each claim that the record makes, in a fixed order. Lots typed before the session count as said. */
export function howKnown(entries: readonly LogEntry[], lots: Summary["lots"]): readonly (readonly [Claim, Counts])[] {
  const found = new Map<Claim, { measured: number; scanned: number; said: number }>();
  const count = (claim: Claim, known: keyof Counts) => {
    const so = found.get(claim) ?? { measured: 0, scanned: 0, said: 0 };
    so[known]++;
    found.set(claim, so);
  };
  for (const { fact, known } of entries) {
    const claim = claimOf[fact.type];
    if (claim) count(claim, known);
  }
  for (const { n, known } of lots) if (n === null) count("lots", known === "scanned" ? "scanned" : "said");
  return claims.flatMap((claim) => {
    const so = found.get(claim);
    return so ? [[claim, so] as const] : [];
  });
}
