/** The first place where two JSON values differ, in words. Pure. */

/** @returns null where they are the same. */
export function firstDifference(
  expected: unknown,
  found: unknown,
  path = "",
): { expected: string; found: string } | null {
  if (Array.isArray(expected) && Array.isArray(found) && expected.length !== found.length) {
    const at = expected.findIndex((one, i) => firstDifference(one, found[i]) !== null);
    const from = at < 0 ? expected.length : at;
    return { expected: counted(path, expected, from), found: counted(path, found, from) };
  }
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
/** Of lists of another length: how many there are, and the first that is not the same. */
const counted = (path: string, list: readonly unknown[], at: number): string =>
  `${said(`${list.length} ${path}, number ${at + 1}`, list[at])}`;
const said = (path: string, value: unknown): string =>
  `${path}: ${value === undefined ? "nothing" : JSON.stringify(value)}`;
