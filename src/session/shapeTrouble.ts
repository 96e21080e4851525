/** What is wrong with the shape of a file, in plain words: what was found there, what belongs there, how to mend it. */
import type { z } from "zod";

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

function kindOf(value: unknown): string {
  if (value === null) return "nothing (null)";
  if (Array.isArray(value)) return "a list";
  return "an object";
}

const wanted: Readonly<Record<string, string>> = {
  string: "a text in quotes",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list in square brackets",
  object: "an object in braces",
  record: "an object in braces",
};
const belongs = (expected: string): string => wanted[expected] ?? expected;

const valueAt = (json: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === "object" && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined),
    json,
  );

export interface ShapeTrouble {
  readonly at: string;
  readonly message: string;
}

/** @param issue the first that the schema found in `json` */
export function shapeTrouble(json: unknown, issue: Issue): ShapeTrouble {
  const found = valueAt(json, issue.path);
  const at = pathOf(issue.path);
  const say = (message: string): ShapeTrouble => ({ at, message });
  const isPlain = typeof found === "number" || typeof found === "boolean";
  const is = typeof found === "string" ? quoted(found) : isPlain ? String(found) : kindOf(found);
  if (found === undefined && issue.code !== "unrecognized_keys") {
    const expected = issue.code === "invalid_type" ? ` It is ${belongs(issue.expected)}.` : "";
    return say(`This field is missing.${expected} Add it.`);
  }
  switch (issue.code) {
    case "invalid_type":
      return say(`Here stands ${is}, where ${belongs(issue.expected)} belongs. Correct it.`);
    case "unrecognized_keys": {
      const [key = ""] = issue.keys;
      const hint = /^(after|before|next|order|needs|dependsOn)$/.test(key)
        ? " Steps are done in the order of their list."
        : "";
      return {
        at: pathOf([...issue.path, key]),
        message: `A protocol has no field ${quoted(key)} here. Take it out.${hint}`,
      };
    }
    case "invalid_value":
      return say(`Here stands ${is}. It may only be: ${issue.values.map(String).join(", ")}. Correct it.`);
    case "invalid_union": {
      const options = "options" in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];
      const may = options.length > 0 ? ` It may only be: ${options.join(", ")}.` : "";
      return say(`Here stands ${is}, which is none of those that a protocol knows.${may} Correct it.`);
    }
    case "too_small":
      return say(
        `${measured(issue.origin)} too ${issue.origin === "string" || issue.origin === "array" ? "short" : "small"}: at least ${issue.minimum}. Correct it.`,
      );
    case "too_big":
      return say(
        `${measured(issue.origin)} too ${issue.origin === "string" || issue.origin === "array" ? "long" : "large"}: at most ${issue.maximum}. Correct it.`,
      );
    case "invalid_format":
      if (issue.format === "date") return say(`${is} is not a day of the calendar. Write it like 2026-11-25.`);
      return say(`${is} is not well formed: ${issue.message}. Correct it.`);
    default:
      return say(`${issue.message}. Correct it.`);
  }
}

function measured(origin: string): string {
  if (origin === "string") return "This text is";
  return origin === "array" || origin === "set" ? "This list is" : "This number is";
}
