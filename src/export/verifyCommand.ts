/** `gloveside verify RECORD.json`: prints the three verdicts apart. */
import { readFile, stat } from "node:fs/promises";
import { parseArgs } from "node:util";
import { type PublicKey, PublicKey as PublicKeySchema } from "../log";
import { readList, type TrustedKey } from "../trust/trustedKeys";
import { mostBytes } from "./readRecord";
import { type Fault, inWords, passes, shortly, type Verdict, whatItProves } from "./verdict";
import { verifyRecord } from "./verifyRecord";

const help = `gloveside verify RECORD.json [--trusted LIST.json] [--trust KEY]... [--unfinished] [--json]

Checks a record and says three things apart: whether it is intact, by which key it
is signed, and whether all that it says follows from its facts when they are replayed.

  --trusted LIST the studio's list of trusted devices, as its Keeping page saves it
  --trust KEY    a device's public key that you trust, 64 hex digits; may be given again.
                 Without either the key is named and not judged: compare it with your list.
  --unfinished   take a record that is not sealed yet; facts may be missing at its end
  --json         print the verdict as JSON
  --help         print this

Exit code 0: passed. 1: failed. 2: wrong usage, or a file that cannot be read.
${whatItProves}
`;

/** @param out Takes text as it is; line ends are included. @returns the exit code. */
export async function verify(argv: readonly string[], out: (text: string) => void): Promise<number> {
  const wrong = (line: string): number => {
    out(`${line} Try: gloveside verify --help\n`);
    return 2;
  };
  const asked = readArguments(argv);
  if (typeof asked === "string") return wrong(asked);
  const { values, positionals } = asked;
  if (values.help) {
    out(help);
    return 0;
  }
  const [path, ...more] = positionals;
  if (path === undefined) return wrong("Which record? Give one file.");
  if (more.length > 0) return wrong("One record at a time.");
  const strange = values.trust?.find((key) => !PublicKeySchema.safeParse(key.toLowerCase()).success);
  if (strange !== undefined) return wrong(`"${strange}" is not a public key of 64 hex digits.`);
  const list = values.trusted === undefined ? null : await listAt(values.trusted);
  if (typeof list === "string") return wrong(list);
  const named = values.trust?.map((key): PublicKey => key.toLowerCase());
  const trusted = list || named ? [...(list ?? []).map(({ key }) => key), ...(named ?? [])] : undefined;

  let bytes: Uint8Array;
  try {
    const { size } = await stat(path);
    if (size > mostBytes) return wrong(`${path} has ${size} bytes; no record has more than ${mostBytes}.`);
    bytes = await readFile(path);
  } catch (error) {
    return wrong(`${path} cannot be read (${(error as NodeJS.ErrnoException).code ?? "unknown trouble"}).`);
  }
  const options = { acceptUnfinished: values.unfinished ?? false, ...(trusted ? { trusted } : {}) };
  const verdict = await verifyRecord(bytes, options);
  out(values.json ? `${JSON.stringify({ passed: passes(verdict), ...verdict })}\n` : printed(verdict, list ?? []));
  return passes(verdict) ? 0 : 1;
}

const options = {
  trust: { type: "string", multiple: true },
  trusted: { type: "string" },
  unfinished: { type: "boolean" },
  json: { type: "boolean" },
  help: { type: "boolean", short: "h" },
} as const;

function readArguments(argv: readonly string[]) {
  try {
    return parseArgs({ args: [...argv], options, allowPositionals: true });
  } catch (error) {
    return `${(error as Error).message.split(". ")[0]}.`;
  }
}

/** @returns the list, or what is wrong in one line. */
async function listAt(path: string): Promise<readonly TrustedKey[] | string> {
  try {
    const read = readList(await readFile(path, "utf8"));
    return read.ok ? read.value : `${path}: ${read.words}`;
  } catch (error) {
    return `${path} cannot be read (${(error as NodeJS.ErrnoException).code ?? "unknown trouble"}).`;
  }
}

function printed({ intact, signedBy, follows, known, personal }: Verdict, list: readonly TrustedKey[]): string {
  const sealed = intact.ok && intact.sealed ? "sealed" : "not sealed: facts may be missing at the end";
  const owner = list.find(({ key }) => signedBy.ok && key === signedBy.key)?.name;
  const trust = {
    true: `a trusted key${owner === undefined ? "" : `: ${shortly(owner)}`}`,
    false: "NOT a trusted key",
    null: "compare it with your list",
  };
  const lines = [
    `intact     ${intact.ok ? `yes: ${intact.entries} facts, ${sealed}` : failed(intact)}`,
    signedBy.ok
      ? `signed by  ${signedBy.fingerprint} (${trust[`${signedBy.trusted}`]})`
      : `signed by  ${failed(signedBy)}`,
    `follows    ${follows.ok ? "yes: every time, count, gate and the summary come out the same" : failed(follows)}`,
    ...(known ? [`known      ${known.measured} measured, ${known.scanned} scanned, ${known.said} said`] : []),
    ...(personal ? [`personal   ${besideIt(personal)}`] : []),
    whatItProves,
  ];
  return `${lines.join("\n")}\n`;
}

const clientWords = {
  kept: "the client's reference is included",
  erased: "the client's reference was erased",
  notIncluded: "the client's reference is not included",
  inHeader: "the client's reference stands in the header",
  none: "no client's reference",
} as const;

function besideIt({ client, notes: { kept, erased, notIncluded } }: NonNullable<Verdict["personal"]>): string {
  const all = kept + erased + notIncluded;
  const notes = all === 0 ? "no notes" : `notes: ${kept} included, ${erased} erased, ${notIncluded} not included`;
  return `${clientWords[client]}; ${notes}`;
}

const failed = ({ code, at, expected, found }: Fault<string>): string =>
  code === "not-checked"
    ? "not checked: the record could not be read"
    : `NO: ${code} at ${inWords(at)}; expected ${shortly(expected)}, found ${shortly(found)}`;
