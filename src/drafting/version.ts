/**
 * Version and digest of a protocol. The digest says exactly which text it is: SHA-256 over its canonical JSON (RFC 8785),
 * nothing before or after, so that any tool can compute it from the file. The version is for people: it grows with every
 * save, by its last number where only words have changed, by its middle one where anything is done otherwise.
 */
import { canonicalText, type Digest, digestOf } from "../log/canonical";
import type { Protocol } from "../session/protocol";

const utf8 = new TextEncoder();

export const protocolDigest = (protocol: Protocol): Digest => digestOf(utf8.encode(canonicalText(protocol)));

/** What stands between two versions of one protocol, the version itself apart. */
export type Difference = "none" | "words" | "work";

export function differenceOf(before: Protocol, after: Protocol): Difference {
  const [a, b] = [before, after].map((protocol) => ({ ...protocol, version: "" })) as [Protocol, Protocol];
  if (canonicalText(a) === canonicalText(b)) return "none";
  return canonicalText(withoutWords(a)) === canonicalText(withoutWords(b)) ? "words" : "work";
}

/** @param saved as it was saved last; null for one that never was. */
export function nextVersion(saved: Protocol | null, draft: Protocol): string {
  if (!saved) return draft.version;
  const [major = 0, minor = 0, patch = 0] = saved.version.split(".").map(Number);
  switch (differenceOf(saved, draft)) {
    case "none":
      return saved.version;
    case "words":
      return `${major}.${minor}.${patch + 1}`;
    case "work":
      return `${major}.${minor + 1}.0`;
  }
}

const textFields = new Set(["name", "about", "say", "show", "caution", "calledAs"]);

/** Texts taken out. A caution that comes or goes is work: it is there to guard somebody. */
function withoutWords(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutWords);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [name, textFields.has(name) ? "" : withoutWords(inner)]),
  );
}
