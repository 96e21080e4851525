/** What `gloveside verify` prints: passed or not, which record it is, then each verdict with what it rests on. */
import { clientIn } from "../log";
import { papersEn } from "../screen/papers/words/en";
import type { TrustedKey } from "../trust/trustedKeys";
import type { RecordFile } from "./recordFile";
import { type Fault, factAt, inWords, passes, sealedOtherwise, shortly, type Verdict, whatItProves } from "./verdict";

const { verify: words } = papersEn;
const indent = " ".repeat(11);

/** @param record null where it could not be read. @param list names for keys. */
export function printed(verdict: Verdict, record: RecordFile | null, list: readonly TrustedKey[]): string {
  const { intact, signedBy, follows, known, personal } = verdict;
  const told = (fault: Fault<string>, what: string) => failed(fault, what, record);
  const lines = [
    passes(verdict) ? "PASSED" : "NOT PASSED",
    ...(record ? [`record     ${whichOne(record)}`] : []),
    ...(intact.ok
      ? [
          `intact     yes: ${intact.entries} facts, ${intact.sealed ? "sealed" : "not sealed: facts may be missing at the end"}`,
        ]
      : told(intact, `intact     NO. ${words.intactCodes[intact.code]}`)),
    ...(signedBy.ok
      ? [`signed by  ${signedBy.fingerprint} (${trust(signedBy, list)})`]
      : signedBy.code === "not-checked"
        ? ["signed by  not checked: the record could not be read"]
        : told(signedBy, `signed by  NO. ${words.signedCodes[signedBy.code]}`)),
    ...(sealedOtherwise(verdict) ? [`${indent}${words.sealedOtherwise}`] : []),
    ...(follows.ok
      ? ["follows    yes: every time, count, gate and the summary come out the same"]
      : follows.code === "not-checked"
        ? ["follows    not checked: the record could not be read"]
        : told(follows, `follows    NO. ${words.breachCodes[follows.code]}`)),
    ...(known ? [`known      ${known.measured} measured, ${known.scanned} scanned, ${known.said} said`] : []),
    ...(personal ? [`personal   ${besideIt(personal)}`] : []),
    whatItProves,
  ];
  return `${lines.join("\n")}\n`;
}

/** By its own words, which count for what the verdicts make of them. */
function whichOne({ header, entries, personal }: RecordFile): string {
  const { input, session } = header;
  const client = clientIn(header, personal);
  const parts = [
    entries[0]?.at.slice(0, 16).replace("T", " "),
    input.station,
    input.artist,
    ...("reference" in client ? [`client ${client.reference}`] : []),
    `${input.protocol.name.en} ${input.protocol.version}`,
    `session ${session}`,
  ];
  return parts.map((part) => shortly(part ?? "no fact")).join(", ");
}

function trust(signedBy: Extract<Verdict["signedBy"], { ok: true }>, list: readonly TrustedKey[]): string {
  if (signedBy.trusted === null) return "compare it with your list";
  if (!signedBy.trusted) return "NOT a trusted key";
  const owner = list.find(({ key }) => key === signedBy.key)?.name;
  return `a trusted key${owner === undefined ? "" : `: ${shortly(owner)}`}`;
}

/** The sentence, the place with the fact that stands there, what was expected and what is there. */
function failed({ code, at, expected, found }: Fault<string>, what: string, record: RecordFile | null): string[] {
  const fact = record && factAt(record.entries, at);
  const place = at.part === "entry" ? `fact ${at.n}` : inWords(at);
  return [
    `${what} [${code}]`,
    `${indent}where     ${place}${fact ? `, ${shortly(fact.type)} at ${shortly(fact.clock)}` : ""}`,
    `${indent}expected  ${shortly(expected)}`,
    `${indent}found     ${shortly(found)}`,
  ];
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
