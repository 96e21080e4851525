/** Due times after an exposure: every rule with its instant, on the studio's wall clock, in order. */
import { dueAfter } from "./duration";
import { type ExposureRule, exposureRules } from "./exposureRules";
import { type ExposureWords, exposureEn } from "./exposureWords";
import { showWall } from "./zone";

export type ExposureDue = {
  readonly rule: ExposureRule;
  /** Opening of the window, epoch ms; null where it is open from the accident on. */
  readonly fromMs: number | null;
  readonly dueMs: number;
};

/** @param zone IANA zone of the studio. Sorted by due time; the same accident always gives the same list. */
export function exposureDue(
  exposedAtMs: number,
  zone: string,
  rules: readonly ExposureRule[] = exposureRules,
): readonly ExposureDue[] {
  return rules
    .map((rule) => ({
      rule,
      fromMs: rule.from && dueAfter(exposedAtMs, rule.from, zone),
      dueMs: dueAfter(exposedAtMs, rule.until, zone),
    }))
    .sort((a, b) => a.dueMs - b.dueMs || a.rule.id.localeCompare(b.rule.id, "en"));
}

/** A due moment is passed only after it, not at it. */
export function standing(due: ExposureDue, nowMs: number): "not yet open" | "open" | "passed" {
  if (nowMs > due.dueMs) return "passed";
  return due.fromMs !== null && nowMs < due.fromMs ? "not yet open" : "open";
}

/** "2026-11-28 07:40  first dose of ..., at the latest [CDC nPEP, MMWR 74(RR-1), 2025]" */
export function showExposureDue(due: ExposureDue, zone: string, w: ExposureWords = exposureEn): string {
  const { source, year, status } = due.rule;
  const opens = due.fromMs === null ? "" : `${showWall(due.fromMs, zone)} ${w.to} `;
  const provenance = [source, year ?? w.undated, ...(status === "confirmed" ? [] : [w.fromMemory])].join(", ");
  return `${opens}${showWall(due.dueMs, zone)}  ${w.what(due.rule)} [${provenance}]`;
}
