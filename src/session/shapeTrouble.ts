/** What is wrong with the shape of a file, in plain words: what was found there, what belongs there, how to mend it. */
import type { z } from "zod";
import type { FieldKind, FoundKind, Measured, TroubleSays, TroubleWords } from "./troubleWords";

type Issue = z.core.$ZodIssue;

/** `$.steps[3].effects[0].item`, as a person would point at it. */
export const pathOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    const name = String(key);
    return /^[A-Za-z_$][\w$]{0,60}$/.test(name) ? `${text}.${name}` : `${text}[${quoted(name)}]`;
  }, "$");

/** Text of a stranger: on one line, and short. */
const quoted = (text: string): string => {
  const short = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return JSON.stringify(short).replace(/[\u007f-\u009f\u2028\u2029]/g, "?");
};

const kindOf = (value: unknown): FoundKind => (value === null ? "nothing" : Array.isArray(value) ? "list" : "object");

const belongs = (expected: string, { kinds }: TroubleWords): string =>
  Object.hasOwn(kinds, expected) ? kinds[expected as FieldKind] : expected;

const valueAt = (json: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === "object" && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined),
    json,
  );

export interface ShapeTrouble {
  readonly at: string;
  readonly says: TroubleSays;
}

/** @param issue the first that the schema found in `json` */
export function shapeTrouble(json: unknown, issue: Issue): ShapeTrouble {
  const found = valueAt(json, issue.path);
  const at = pathOf(issue.path);
  const say = (says: TroubleSays): ShapeTrouble => ({ at, says });
  const isPlain = typeof found === "number" || typeof found === "boolean";
  const is = (words: TroubleWords): string =>
    typeof found === "string" ? quoted(found) : isPlain ? String(found) : words.found[kindOf(found)];
  if (found === undefined && issue.code !== "unrecognized_keys") {
    return say((words) => words.missing(issue.code === "invalid_type" ? belongs(issue.expected, words) : null));
  }
  switch (issue.code) {
    case "invalid_type":
      return say((words) => words.wrongKind(is(words), belongs(issue.expected, words)));
    case "unrecognized_keys": {
      const [key = ""] = issue.keys;
      const isOrder = /^(after|before|next|order|needs|dependsOn)$/.test(key);
      return { at: pathOf([...issue.path, key]), says: (words) => words.unknownField(quoted(key), isOrder) };
    }
    case "invalid_value":
      return say((words) => words.onlyThese(is(words), issue.values.map(String).join(", ")));
    case "invalid_union": {
      const options = "options" in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];
      return say((words) => words.noneOf(is(words), options.length > 0 ? options.join(", ") : null));
    }
    case "too_small":
      return say((words) => words.atLeast(measured(issue.origin), String(issue.minimum)));
    case "too_big":
      return say((words) => words.atMost(measured(issue.origin), String(issue.maximum)));
    case "invalid_format":
      if (issue.format === "date") return say((words) => words.noDay(is(words)));
      return say((words) => words.malformed(is(words), issue.message));
    default:
      return say((words) => words.other(issue.message));
  }
}

function measured(origin: string): Measured {
  if (origin === "string") return "text";
  return origin === "array" || origin === "set" ? "list" : "number";
}
