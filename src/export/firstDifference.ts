/** The first place where two JSON values differ, in words. Pure. */

/** @returns null where they are the same. */
export function firstDifference(
  expected: unknown,
  found: unknown,
  path = "",
): { expected: string; found: string } | null {
  if (isObject(expected) && isObject(found)) {
    for (const name of new Set([...Object.keys(expected), ...Object.keys(found)].sort())) {
      const inside = firstDifference(expected[name], found[name], path === "" ? name : `${path}.${name}`);
      if (inside) return inside;
    }
    return null;
  }
  if (Object.is(expected, found)) return null;
  return { expected: said(path, expected), found: said(path, found) };
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;
const said = (path: string, value: unknown): string =>
  `${path}: ${value === undefined ? "nothing" : JSON.stringify(value)}`;
