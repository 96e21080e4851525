/** Why a protocol is not proved though no breach was shown. It counts as no. */
import type { DeviationCode } from "../session/fact";
import type { RuleId } from "./rules";

export type Why =
  /** Things followed together have more states than are walked. */
  | { readonly code: "tooMany"; readonly rule: RuleId; readonly names: readonly string[]; readonly most: number }
  | { readonly code: "notFollowed"; readonly rule: RuleId }
  | { readonly code: "leftOpen"; readonly rule: RuleId; readonly names: readonly string[] }
  /** A finding of the station that the chart would not hold back. */
  | { readonly code: "notHeldBack"; readonly step: string; readonly finding: DeviationCode }
  | { readonly code: "onlyAPart" }
  | { readonly code: "stopped" }
  | { readonly code: "notStarted" };
