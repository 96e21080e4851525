/** The body of `gloveside hear`: recordings in, one line of JSON for each phrase heard out. */
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { type AddressWord, addressWords, type CommandId, commandIds } from "../intent/phrases";
import { spoken } from "../intent/spoken";
import type { PhraseLanguage } from "../intent/wording";
import type { Heard } from "./heard";
import { documentOf, hearManifest, linesOf } from "./hearManifest";
import { hearWav } from "./hearWav";
import { readManifest } from "./manifest";
import type { LoadedModel, PhraseModel } from "./network/loadModel";
import { shippedModel } from "./network/shippedModel";

/** Where lines go: `process.stdout` and `process.stderr` fit. */
export interface Out {
  write(text: string): unknown;
}

export const hearHelp = `Usage: gloveside hear FILE.wav... [options]
       gloveside hear DIR --manifest FILE.csv [options]

Runs recordings through the recogniser that the app uses and prints one line of
JSON for each phrase heard: atMs (end of the sound it was decided on, in
milliseconds from the start), kind ("understood" or "unsure"), address, command,
words and confidence (0 to 1), or the candidates when unsure. Several files: each
line names its file. WAV, 8 to 32 bit, one or two channels, 8 to 96 kHz.

With --manifest the recordings in DIR are labelled, and a table comes out: heard
right and acted on wrongly by condition, false actions an hour, each with its 95 %
interval, as npm run bench:voice prints it. Columns of the CSV file: file, phrase
(an id, or empty where nothing in the sound is a command), condition, allowed (ids
with spaces between them, or "all"; empty: what --allowed says); and where they are
known, speaker (intervals then draw whole speakers) and address.

Options:
  --allowed LIST     commands listened for, separated by commas, or "all" (default)
  --address WORD     address word listened for: ${addressWords.join(", ")} (default station)
  --model FOLDER     folder with model.json and model.bin
  --manifest FILE    what the recordings hold, as CSV
  --json             with --manifest: one JSON document instead of the table
  --help             this text

Exit status: 0 if every file could be read, 2 otherwise; files that could not are
named and skipped.
`;

type Wishes =
  | { readonly help: true }
  | {
      readonly help: false;
      readonly files: readonly string[];
      readonly address: AddressWord;
      readonly allowed: readonly CommandId[];
      readonly model: string | null;
      readonly manifest: string | null;
      readonly json: boolean;
    };

/**
 * @param argv  What follows "hear" on the command line.
 * @param out   Takes the JSON lines and the help; `err` takes complaints.
 * @param load  The phrase model; by default the one in public/voice.
 * @returns exit status: 0, or 2 when the arguments, the model or a file were no good.
 */
export async function hear(
  argv: readonly string[],
  out: Out,
  err: Out = out,
  load: (folder?: URL) => Promise<LoadedModel> = shippedModel,
): Promise<number> {
  const complain = (message: string) => {
    err.write(`gloveside hear: ${message}\n`);
    return 2;
  };
  const wishes = wishesOf(argv);
  if (typeof wishes === "string") return complain(`${wishes} (see gloveside hear --help)`);
  if (wishes.help) {
    out.write(hearHelp);
    return 0;
  }
  const loaded = await load(wishes.model === null ? undefined : folderUrl(wishes.model)).catch(() => null);
  if (loaded === null) return complain("the phrase model cannot be read");
  if (!loaded.ok) return complain(loaded.message);
  if (wishes.manifest !== null) return hearLabelled(wishes, wishes.manifest, loaded.model, out, complain);
  let status = 0;
  for (const file of wishes.files) {
    const bytes = await readFile(file).catch(() => null);
    const result = bytes === null ? null : hearWav(bytes, { ...wishes, model: loaded.model });
    if (result === null) status = complain(`${file}: cannot be read`);
    else if (!result.ok) status = complain(`${file}: ${result.message}`);
    else
      for (const heard of result.heard)
        printTo(out, heard, loaded.model.file.outputs.language, wishes.files.length > 1 ? { file } : {});
  }
  return status;
}

async function hearLabelled(
  { files, allowed, address, json }: Wishes & { readonly help: false },
  manifest: string,
  model: PhraseModel,
  out: Out,
  complain: (message: string) => number,
): Promise<number> {
  const text = await readFile(manifest, "utf8").catch(() => null);
  if (text === null) return complain(`${manifest}: cannot be read`);
  const read = readManifest(text, { allowed, address });
  if (!read.ok) return complain(`${manifest}: ${read.message}`);
  const heard = await hearManifest(model, files[0] ?? ".", read.rows);
  const all = { ...heard, skipped: [...read.bad, ...heard.skipped] };
  out.write(json ? `${JSON.stringify(documentOf(model, all), null, 2)}\n` : `${linesOf(all).join("\n")}\n`);
  for (const { file, why } of all.skipped) complain(`${file}: ${why}`);
  return all.skipped.length === 0 ? 0 : 2;
}

function printTo(out: Out, heard: Heard, language: PhraseLanguage, where: { readonly file?: string }): void {
  if (heard.kind === "noise") return;
  const atMs = Math.round(heard.atMs);
  const round = (n: number) => Math.round(n * 1000) / 1000;
  const said =
    heard.kind === "understood"
      ? {
          command: heard.command,
          words: spoken(heard.address, heard.command, language),
          confidence: round(heard.confidence),
        }
      : { candidates: heard.candidates, confidences: heard.confidences.map(round) };
  out.write(`${JSON.stringify({ ...where, atMs, kind: heard.kind, address: heard.address, ...said })}\n`);
}

const folderUrl = (folder: string) => pathToFileURL(`${resolve(folder)}/`);

/** What was asked for, or what is wrong with it. */
function wishesOf(argv: readonly string[]): Wishes | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        allowed: { type: "string", default: "all" },
        address: { type: "string", default: "station" },
        model: { type: "string" },
        manifest: { type: "string" },
        json: { type: "boolean", default: false },
        help: { type: "boolean", default: false },
      },
    });
    if (values.help) return { help: true };
    const address = addressWords.find((word) => word === values.address);
    if (address === undefined) return `"${values.address}" is not an address word: ${addressWords.join(", ")}`;
    const names = values.allowed === "all" ? commandIds : values.allowed.split(",").map((name) => name.trim());
    const unknown = names.find((name) => !(commandIds as readonly string[]).includes(name));
    if (unknown !== undefined) return `"${unknown}" is not a command: ${commandIds.join(", ")}`;
    if (positionals.length === 0) return "no recording was named";
    if (values.manifest !== undefined && positionals.length > 1) return "with --manifest, one folder is named";
    if (values.json && values.manifest === undefined)
      return "--json needs --manifest: without it, lines are JSON already";
    return {
      help: false,
      files: positionals,
      address,
      allowed: names as readonly CommandId[],
      model: values.model ?? null,
      manifest: values.manifest ?? null,
      json: values.json,
    };
  } catch (error) {
    return error instanceof Error ? error.message : "the arguments cannot be read";
  }
}
