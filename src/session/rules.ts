/**
 * The rules by which facts are folded, by their version. A record names its own, and is read by those for ever; a session
 * that was begun before an update goes on by those that it began with. What each of them read otherwise stands beside it.
 */
export const rulesVersions = [
  /** As 1.1.0; its summary did not yet say what was done about a deviation. */
  "1.0.0",
  /** Taking off a cover that is not there met the thing under it; cleaning a wet surface let its clock run on; an accident
   * in the middle of a change of gloves was resumed as the hands were just then. */
  "1.1.0",
  /** Its summary did not yet name the spoken notes. */
  "1.2.0",
  /** Its summary did not yet say what was out of use at the end; with a sharp out, an accident that found bare hands in a
   * list was resumed with gloves on. */
  "1.3.0",
  /** What a slip soiled in the breakdown, cleaned or wet already, was not cleaned again: it was only wetted again, or the walk
   * stuck where it was to be wiped; a torn barrier was told of a thing whose cover was off as one that is still on it. */
  "1.4.0",
  "1.5.0",
] as const;

/** Written into every new header. Raise it with any change of rule or fold that reads an old record differently. */
export const currentRules = "1.5.0" satisfies (typeof rulesVersions)[number];

/** Whether these fold as it was before 1.2.0, 1.4.0 or 1.5.0. */
export const foldAsBefore12 = (rules: string): boolean => rules === "1.0.0" || rules === "1.1.0";
export const foldAsBefore14 = (rules: string): boolean =>
  foldAsBefore12(rules) || rules === "1.2.0" || rules === "1.3.0";
export const foldAsBefore15 = (rules: string): boolean => foldAsBefore14(rules) || rules === "1.4.0";
