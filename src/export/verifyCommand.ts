/** `gloveside verify FILE`: a record, or a page that carries one; prints the three verdicts apart. */
import { readFile, stat } from "node:fs/promises";
import { parseArgs } from "node:util";
import { type PublicKey, PublicKey as PublicKeySchema } from "../log";
import { readList, type TrustedKey } from "../trust/trustedKeys";
import { checkFile, mostFileBytes } from "./checkFile";
import { passes, whatItProves } from "./verdict";
import { printed } from "./verifyPrinted";

const help = `gloveside verify FILE [--trusted LIST.json] [--trust KEY]... [--unfinished] [--json]

Checks a record, or the record in a page that verifies itself, and says three things apart:
whether it is intact, by which key it is signed, and whether all that it says follows from
its facts when they are replayed. What fails is told with the fact, what was expected there
and what is there.

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
    if (size > mostFileBytes) return wrong(`${path} has ${size} bytes; no record has more than ${mostFileBytes}.`);
    bytes = await readFile(path);
  } catch (error) {
    return wrong(`${path} cannot be read (${(error as NodeJS.ErrnoException).code ?? "unknown trouble"}).`);
  }
  const options = { acceptUnfinished: values.unfinished ?? false, ...(trusted ? { trusted } : {}) };
  const checked = await checkFile(bytes, options);
  if (!checked.ok) return wrong(`${path} is a page that holds no record.`);
  const { verdict, read } = checked;
  const record = read?.record ?? null;
  out(
    values.json ? `${JSON.stringify({ passed: passes(verdict), ...verdict })}\n` : printed(verdict, record, list ?? []),
  );
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
