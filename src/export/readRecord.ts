/** Reads a record file. The bytes are hostile: what comes back is a record in shape, or what is wrong and where. */
import { canonicalText, formatVersion } from "../log";
import { locate } from "./locate";
import { RecordFile } from "./recordFile";
import type { Fault, IntactCode, Place } from "./verdict";

/** A session of 3,000 facts is about 2 MB; anything past this is not a session. */
export const mostBytes = 64_000_000;

export type ReadRecord =
  /** `raw` is what stands in the file; hashes are over it, never over what a schema may have filled in. */
  { ok: true; record: RecordFile; raw: RecordFile; text: string } | Fault<IntactCode>;

export const fault = (code: IntactCode, at: Place, expected: unknown, found: unknown): Fault<IntactCode> => ({
  ok: false,
  code,
  at,
  expected: String(expected),
  found: String(found),
});
const start: Place = { part: "file", offset: 0 };

/** @param file The bytes of the file, or its text. Never throws. */
export function readRecord(file: Uint8Array | string): ReadRecord {
  if (file.length > mostBytes) return fault("too-large", start, `at most ${mostBytes} bytes`, file.length);
  let text: string;
  try {
    text = typeof file === "string" ? file : new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(file);
  } catch {
    return fault("not-utf8", notUtf8At(file as Uint8Array), "UTF-8", "other bytes");
  }
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return notJson(text);
  }
  const version = (raw as { header?: { formatVersion?: unknown } } | null)?.header?.formatVersion;
  if (typeof version === "number" && version > formatVersion) {
    return fault("newer-format", { part: "header" }, `format ${formatVersion}; a newer app reads this one`, version);
  }
  let read: ReturnType<typeof RecordFile.safeParse>;
  try {
    read = RecordFile.safeParse(raw);
  } catch {
    return fault("wrong-shape", start, "a record", "something nested too deeply");
  }
  if (read.success) {
    const lone = text.includes("\\ud") ? loneSurrogateIn(raw as RecordFile) : null;
    if (lone) return fault("not-canonical", lone, "whole characters (RFC 8785 section 3.2.2.2)", "half of a pair");
    return { ok: true, record: read.data, raw: raw as RecordFile, text };
  }
  const issue = read.error.issues[0];
  const stranger = read.error.issues.find((one) => one.code === "unrecognized_keys" && one.path.length === 0);
  if (stranger?.code === "unrecognized_keys" && (issue?.path.length === 1 || issue === stranger)) {
    // The one name that may be missing is not missed.
    return strangeName(text, String(issue.path[0] ?? "personal"), stranger.keys[0] ?? "");
  }
  const where = (issue?.path ?? []).join(".") || "the file";
  const found = `${where}: ${issue?.message ?? "something else"}`;
  return fault("wrong-shape", placeOf(issue?.path ?? [], raw), "the shape of a record", found);
}

/** A name of the outermost object that is not ours: told by its first letter that differs from the one that is missing. */
function strangeName(text: string, expected: string, found: string): ReadRecord {
  let same = 0;
  while (same < found.length && found[same] === expected[same]) same++;
  const at: Place = { part: "file", offset: Math.max(0, text.indexOf(`${JSON.stringify(found)}:`)) + 1 + same };
  return fault("wrong-shape", at, `"${expected}"`, `"${found}"`);
}

/** JSON may spell half of a surrogate pair; no canonical text can hold it. */
function loneSurrogateIn({ header, entries, closing, personal = [] }: RecordFile): Place | null {
  const isWhole = (value: unknown) => {
    try {
      return canonicalText(value) !== "";
    } catch {
      return false;
    }
  };
  if (!isWhole(header)) return { part: "header" };
  const at = entries.findIndex((entry) => !isWhole(entry));
  if (at >= 0) return { part: "entry", n: at + 1 };
  const part = personal.find((one) => !isWhole(one));
  if (part) return { part: "personal", n: part.n };
  return isWhole(closing) ? null : { part: "summary" };
}

function notJson(text: string): ReadRecord {
  const { at, entry } = locate(text);
  const place: Place = entry === null ? { part: "file", offset: at } : { part: "entry", n: entry };
  return fault("not-json", place, "JSON", `${JSON.stringify(text.slice(at, at + 12))} at character ${at}`);
}

function placeOf([part, at]: readonly PropertyKey[], raw: unknown): Place {
  if (part === "header") return { part };
  if (part === "personal" && typeof at === "number") {
    const n = (raw as { personal?: readonly { n?: unknown }[] }).personal?.[at]?.n;
    return { part, n: typeof n === "number" ? n : at };
  }
  if (part === "entries" && typeof at === "number") return { part: "entry", n: at + 1 };
  if (part === "signatures" && typeof at === "number") return { part: "signature", n: at };
  if (part === "closing") return { part: at === "summary" ? "summary" : "seal" };
  return start;
}

/** Decodes as far as it goes, to say in which entry the first strange byte stands. */
function notUtf8At(bytes: Uint8Array): Place {
  const loose = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
  const offset = loose.indexOf("\ufffd");
  const { entry } = locate(loose.slice(0, offset));
  return entry === null ? { part: "file", offset } : { part: "entry", n: entry };
}
