/** The list that says what recordings hold: one row a file, with columns file, phrase, condition and allowed. */
import { type AddressWord, addressWords, type CommandId, commandIds } from "../intent/phrases";
import { quoted } from "../sums/answer";
import { splitRows } from "../sums/csvRows";

export interface Labelled {
  /** As written; beside the folder that was named. */
  readonly file: string;
  /** Null: nothing in it is a command. */
  readonly said: CommandId | null;
  readonly condition: string;
  readonly allowed: readonly CommandId[];
  readonly speaker: string;
  readonly address: AddressWord;
}
export interface BadRow {
  readonly file: string;
  readonly why: string;
}
export type Manifest =
  | { readonly ok: true; readonly rows: readonly Labelled[]; readonly bad: readonly BadRow[] }
  | { readonly ok: false; readonly message: string };

/** What the command line said, for cells that are empty. */
export interface Usual {
  readonly allowed: readonly CommandId[];
  readonly address: AddressWord;
}

const columns = ["file", "phrase", "condition", "allowed", "speaker", "address"] as const;
type Column = (typeof columns)[number];
const needed: readonly Column[] = ["file", "phrase", "condition"];

/** @param text CSV (RFC 4180), a header row first. Rows that make no sense are named and left out. */
export function readManifest(text: string, usual: Usual): Manifest {
  const table = splitRows(text);
  if (table === null) return { ok: false, message: "the manifest is not CSV: a quoted field is never closed" };
  const [header, ...rows] = table.rows;
  const names = (header ?? []).map((name) => name.trim().toLowerCase().replace(/ id$/, ""));
  const at = Object.fromEntries(columns.map((column) => [column, names.indexOf(column)])) as Record<Column, number>;
  const missing = needed.find((column) => at[column] < 0);
  if (missing !== undefined) return { ok: false, message: `the manifest has no column "${missing}"` };
  if (rows.length === 0) return { ok: false, message: "the manifest names no file" };
  const read = rows.map((row) => labelOf((column) => row[at[column]]?.trim() ?? "", usual));
  return {
    ok: true,
    rows: read.filter((row): row is Labelled => !("why" in row)),
    bad: read.filter((row): row is BadRow => "why" in row),
  };
}

function labelOf(cell: (column: Column) => string, usual: Usual): Labelled | BadRow {
  const file = cell("file");
  const bad = (why: string): BadRow => ({ file: file === "" ? "a row without a file" : file, why });
  if (file === "") return bad("no file is named");
  const [phrase, word] = [cell("phrase"), cell("address") || usual.address];
  const said = commandOf(phrase);
  if (phrase !== "" && said === null) return bad(`${quoted(phrase)} is not a phrase id`);
  const address = addressWords.find((known) => known === word);
  if (address === undefined) return bad(`${quoted(word)} is not an address word: ${addressWords.join(", ")}`);
  const listed = cell("allowed");
  const allowed = listed === "" ? usual.allowed : listed === "all" ? commandIds : listedIn(listed);
  if (typeof allowed === "string") return bad(`${quoted(allowed)} in "allowed" is not a phrase id`);
  if (said !== null && !allowed.includes(said)) return bad(`${said} is said but not among the allowed`);
  return { file, said, condition: cell("condition") || "unnamed", allowed, speaker: cell("speaker") || file, address };
}

const commandOf = (text: string): CommandId | null => commandIds.find((id) => id === text) ?? null;

/** Ids with spaces, commas, semicolons or bars between them; or the first word that is none. */
function listedIn(text: string): readonly CommandId[] | string {
  const words = text.split(/[\s,;|]+/).filter((word) => word !== "");
  const unknown = words.find((word) => commandOf(word) === null);
  return unknown ?? words.flatMap((word) => commandOf(word) ?? []);
}
