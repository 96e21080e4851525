/** What the steriliser subcommand reads: numbers in range, the load, how to judge, and the file. */
import { readFile, stat } from "node:fs/promises";
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import type { Options } from "../sums/commandLine";
import type { JudgeChoice } from "./judge";
import { defaultLethality, lethalityMethods } from "./lethality";
import { checkLoad, cycleClasses, loadKinds } from "./load";

/** null: the load is right for the class, or was not asked about. Text: why it is not. */
export function readLoad(given: Options): Answer<string | null, string> {
  const name = given.text("class");
  const load = given.many("load");
  if (name === undefined && load.length === 0) return answer(null);
  const cycleClass = cycleClasses.find((c) => c === name);
  if (!cycleClass) return refuse("usage", `--class must be one of ${cycleClasses.join(", ")}.`);
  const known = (names: readonly string[]) => loadKinds.filter((kind) => names.includes(kind));
  const stated = given.many("stated");
  const odd = [...load, ...stated].find((kind) => !loadKinds.some((k) => k === kind));
  if (odd !== undefined) return refuse("usage", `${quoted(odd)} is not a kind of load: ${loadKinds.join(", ")}.`);
  const checked = checkLoad(cycleClass, known(load), known(stated));
  if (checked.ok) return answer(null);
  return checked.code === "empty-load" ? checked : answer(checked.words);
}

export function readChoice(given: Options): Answer<JudgeChoice, string> {
  const gap = readNumber(given, "gap", 60, 0.001, 3600);
  if (!gap.ok) return gap;
  const referenceC = readNumber(given, "tref", defaultLethality.referenceC, 50, 200);
  if (!referenceC.ok) return referenceC;
  const zK = readNumber(given, "z", defaultLethality.zK, 1, 100);
  if (!zK.ok) return zK;
  const method = lethalityMethods.find((m) => m === (given.text("method") ?? defaultLethality.method));
  if (!method) return refuse("usage", `--method must be one of ${lethalityMethods.join(", ")}.`);
  return answer({ mostGapMs: gap.value * 1000, lethality: { method, referenceC: referenceC.value, zK: zK.value } });
}

export function readNumber(
  given: Options,
  name: string,
  fallback: number | null,
  low: number,
  high: number,
): Answer<number, string> {
  const text = given.text(name);
  if (text === undefined) return fallback === null ? refuse("usage", `--${name} is needed.`) : answer(fallback);
  const value = /^-?\d{1,9}(\.\d{1,9})?$/.test(text) ? Number(text) : Number.NaN;
  return value >= low && value <= high
    ? answer(value)
    : refuse("usage", `--${name} must be a number from ${low} to ${high}.`);
}

/** A folder, a missing file or a huge one is the user's trouble, told in one line without the system's own words. */
export async function readText(file: string): Promise<Answer<string, string>> {
  try {
    const { size } = await stat(file);
    if (size > 5_000_000) return refuse("too-large", "The file is larger than 5 MB; a cycle is a few hundred lines.");
    return answer(await readFile(file, "utf8"));
  } catch {
    return refuse("unreadable", `${quoted(file)} cannot be read.`);
  }
}
