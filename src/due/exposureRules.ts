/**
 * What is due after blood got through skin or into an eye or mouth, and from whom the rule comes. The first line is
 * always a clinician, now; these times only say when it is late. None of this is medical advice.
 */
import type { Duration } from "./duration";

export type ExposureRuleId =
  | "clinician"
  | `hiv-${"pep-ideal" | "pep-latest" | "pep-course" | "first" | "final"}`
  | `hbv-${"globulin" | "globulin-limit" | "final"}`
  | `hcv-${"baseline" | "nat" | "final"}`;
export type FirstAidId = "wash" | "never" | "flush" | "clinician";

export type ExposureRule = {
  readonly id: ExposureRuleId;
  readonly what: string;
  /** Start of a window; null where the time runs from the accident. */
  readonly from: Duration | null;
  readonly until: Duration;
  readonly source: string;
  readonly year: number | null;
  readonly status: "confirmed" | "from memory";
};

export const exposureRules: readonly ExposureRule[] = [
  rule("clinician", "occupational health or emergency department", { hours: 1 }, "NHS trust practice", null),
  rule(
    "hiv-pep-ideal",
    "first dose of HIV post-exposure medicine, ideally",
    { hours: 24 },
    "CDC nPEP, MMWR 74(RR-1)",
    2025,
  ),
  rule(
    "hiv-pep-latest",
    "first dose of HIV post-exposure medicine, at the latest",
    { hours: 72 },
    "CDC nPEP, MMWR 74(RR-1)",
    2025,
  ),
  rule(
    "hbv-globulin",
    "hepatitis B globulin and vaccine where not protected, preferably",
    { hours: 24 },
    "MMWR 55(RR-16) App. B",
    2006,
  ),
  rule(
    "hbv-globulin-limit",
    "after this the effect of hepatitis B globulin is unknown",
    { days: 7 },
    "MMWR 62(RR-10)",
    2013,
  ),
  rule("hcv-baseline", "hepatitis C baseline test, preferably", { hours: 48 }, "MMWR 69(RR-6)", 2020),
  window("hcv-nat", "hepatitis C RNA test", { weeks: 3 }, { weeks: 6 }, "MMWR 69(RR-6)", 2020),
  rule("hiv-pep-course", "end of a 28-day course, if begun at once", { days: 28 }, "CDC nPEP, MMWR 74(RR-1)", 2025),
  { ...window("hiv-first", "HIV test", { weeks: 4 }, { weeks: 6 }, "CDC nPEP", 2025), status: "from memory" },
  { ...rule("hiv-final", "HIV test, final", { weeks: 12 }, "CDC nPEP", 2025), status: "from memory" },
  window("hcv-final", "hepatitis C antibody test, final", { months: 4 }, { months: 6 }, "MMWR 69(RR-6)", 2020),
  { ...rule("hbv-final", "hepatitis B tests, final", { months: 6 }, "MMWR 67(RR-1)", 2018), status: "from memory" },
];

/** What every source read agrees on; where they differ, the place profile says so. */
export const agreedFirstAid: readonly { readonly id: FirstAidId; readonly words: string; readonly source: string }[] = [
  {
    id: "wash",
    words: "Puncture or cut: wash with soap and water.",
    source: "HSE (UK); CDC/NCCC PEP quick guide (US)",
  },
  {
    id: "never",
    words: "Do not scrub it, do not suck it, no bleach on the wound.",
    source: "HSE (UK); NHS Greater Glasgow and Clyde",
  },
  {
    id: "flush",
    words: "Eye, nose or mouth: flush with plenty of water.",
    source: "HSE (UK); CDC/NCCC PEP quick guide (US)",
  },
  { id: "clinician", words: "See a clinician now. Do not wait for a test result.", source: "CDC nPEP 2025" },
];

function rule(id: ExposureRuleId, what: string, until: Duration, source: string, year: number | null): ExposureRule {
  return { id, what, from: null, until, source, year, status: "confirmed" };
}

function window(
  id: ExposureRuleId,
  what: string,
  from: Duration,
  until: Duration,
  source: string,
  year: number,
): ExposureRule {
  return { id, what, from, until, source, year, status: "confirmed" };
}
