/** How long a mix may be used: what the label says, or 24 hours from making. Kept as an instant, not a calendar day. */

export type UseBy = {
  readonly madeAtMs: number;
  readonly useByMs: number;
  readonly rule: "label" | "24-hours";
  readonly source: string;
};

const hourMs = 3_600_000;

/**
 * CDC: diluted bleach is good for up to 24 hours (household bleach guidance CS316270-A). Measured lives differ, from
 * hours (neutralised, pH 7) to over 30 days (pH 9-11): Iqbal et al. 2016, PLOS ONE 11(5):e0156136. A flat 24 h is the
 * safe default; only the label may say otherwise.
 */
export const defaultUseHours = 24;

/** @param labelHours what the label gives for the diluted product, if it does; more than zero. */
export function keptUntil(madeAtMs: number, labelHours?: number): UseBy {
  if (labelHours === undefined)
    return { madeAtMs, useByMs: madeAtMs + defaultUseHours * hourMs, rule: "24-hours", source: "CDC CS316270-A" };
  return { madeAtMs, useByMs: madeAtMs + Math.floor(labelHours * hourMs), rule: "label", source: "product label" };
}

/** Past its use-by a mix is refused (from that very millisecond on), and so is one made in the future of this clock. */
export function mixUsable(
  useBy: Pick<UseBy, "madeAtMs" | "useByMs">,
  nowMs: number,
): "usable" | "past-use-by" | "not-yet-made" {
  if (nowMs < useBy.madeAtMs) return "not-yet-made";
  return nowMs < useBy.useByMs ? "usable" : "past-use-by";
}
