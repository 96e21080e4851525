/** The prepare form as text fields, and the session it comes to, or what is still to mend. Pure. */
import type { AddressWord } from "../../intent/phrases";
import type { Label, Protocol } from "../../session/protocol";
import { type Lot, SessionInput } from "../../session/sessionInput";

/** A label as it is typed: numbers are text until they are read. */
export interface LabelDraft {
  readonly name: string;
  readonly contactMin: string;
  readonly contactSec: string;
  readonly reapplyMin: string;
  readonly reapplySec: string;
  readonly oneStep: boolean;
  readonly afterwards: Label["afterwards"];
  readonly expiry: string;
}

export interface LotDraft {
  readonly lot: string;
  readonly expiry: string;
  /** How the form came by it; absent where it was typed or chosen from the shelf. */
  readonly known?: "scanned" | undefined;
}

export interface Draft {
  readonly protocol: string;
  readonly clientReference: string;
  readonly artist: string;
  readonly station: string;
  readonly address: AddressWord;
  readonly language: "en" | "es";
  readonly brisk: boolean;
  readonly letterKeys: boolean;
  /** The camera reads codes held up to it while packs are taken up. */
  readonly readsCodes: boolean;
  /** By product slot, for every protocol that was looked at. */
  readonly labels: Readonly<Record<string, LabelDraft>>;
  readonly lots: Readonly<Record<string, LotDraft>>;
}

export const issueCodes = [
  "missing",
  "tooLong",
  "notATime",
  "tooShort",
  "notADay",
  "lotMissing",
  /** A caution, not an obstacle: the chart refuses it when it is opened, and keeps that. */
  "outOfDate",
] as const;
export type IssueCode = (typeof issueCodes)[number];

export interface Issue {
  /** "clientReference", "label.spray.contact", "lot.needle.expiry" */
  readonly field: string;
  readonly code: IssueCode;
}

export type FromDraft =
  | { readonly ok: true; readonly input: SessionInput; readonly cautions: readonly Issue[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export const emptyDraft = (protocol: string): Draft => ({
  protocol,
  clientReference: "",
  artist: "",
  station: "",
  address: "station",
  language: "en",
  brisk: false,
  letterKeys: true,
  readsCodes: false,
  labels: {},
  lots: {},
});

/** A label of the protocol as the form shows it before anything is typed. */
export function labelDraftOf(label: Label, language: "en" | "es"): LabelDraft {
  const reapply = label.reapplyWithinSec;
  return {
    name: label.name[language] ?? label.name.en,
    contactMin: String(Math.floor(label.contactSec / 60)),
    contactSec: String(label.contactSec % 60),
    reapplyMin: reapply === null ? "" : String(Math.floor(reapply / 60)),
    reapplySec: reapply === null ? "" : String(reapply % 60),
    oneStep: label.oneStep,
    afterwards: label.afterwards,
    expiry: label.expiry ?? "",
  };
}

export const emptyLot: LotDraft = { lot: "", expiry: "" };

const secondsOf = (min: string, sec: string): number => {
  if (min.trim() === "" && sec.trim() === "") return Number.NaN;
  return Number(min.trim() || "0") * 60 + Number(sec.trim() || "0");
};

const isDay = (text: string): boolean => {
  const at = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
};

/**
 * @param today "2026-11-25", for the caution about dates gone by.
 * @param zone IANA time zone of this device.
 * @param carriedOver items that the session before left unready at this station.
 */
export function inputFrom(
  draft: Draft,
  protocol: Protocol,
  today: string,
  zone: string,
  carriedOver: readonly string[],
): FromDraft {
  const issues: Issue[] = [];
  const cautions: Issue[] = [];
  const mend = (field: string, code: IssueCode) => issues.push({ field, code });
  const text = (field: "clientReference" | "artist" | "station", longest: number): string => {
    const value = draft[field].trim();
    if (value === "") mend(field, "missing");
    if (value.length > longest) mend(field, "tooLong");
    return value;
  };
  const day = (field: string, value: string): string | null => {
    if (value === "") return null;
    if (!isDay(value)) mend(field, "notADay");
    else if (value < today) cautions.push({ field, code: "outOfDate" });
    return value;
  };

  const clientReference = text("clientReference", 60);
  const artist = text("artist", 80);
  const station = text("station", 60);
  const labels = Object.fromEntries(
    protocol.products.map(({ id, label }) => [id, labelFrom(id, label, draft, mend, day)]),
  );
  const lots = protocol.items.filter((item) => item.hasLot).flatMap(({ id }) => lotFrom(id, draft, mend, day));
  if (issues.length > 0) return { ok: false, issues };

  const { address, language, brisk } = draft;
  const known = carriedOver.filter((id) => protocol.items.some((item) => item.id === id));
  const input = { protocol, labels, lots, station, artist, clientReference, address, language, zone, brisk };
  return { ok: true, input: SessionInput.parse({ ...input, carriedOver: known }), cautions };
}

type Mend = (field: string, code: IssueCode) => void;
type Day = (field: string, value: string) => string | null;

function labelFrom(id: string, bundled: Label, draft: Draft, mend: Mend, day: Day): Label {
  const typed = draft.labels[id] ?? labelDraftOf(bundled, draft.language);
  const name = typed.name.trim();
  if (name === "") mend(`label.${id}.name`, "missing");
  if (name.length > 240) mend(`label.${id}.name`, "tooLong");
  const contactSec = secondsOf(typed.contactMin, typed.contactSec);
  if (!Number.isInteger(contactSec) || contactSec < 1 || contactSec > 3600) mend(`label.${id}.contact`, "notATime");
  const reapply = secondsOf(typed.reapplyMin, typed.reapplySec);
  const isEmpty = typed.reapplyMin.trim() === "" && typed.reapplySec.trim() === "";
  if (!isEmpty && (!Number.isInteger(reapply) || reapply > 3600)) mend(`label.${id}.reapply`, "notATime");
  else if (!isEmpty && reapply < 10) mend(`label.${id}.reapply`, "tooShort");
  const isUntouched = name === (bundled.name[draft.language] ?? bundled.name.en);
  return {
    // A typed name stands in every language; the protocol's own keeps its translations and their recorded clips.
    name: isUntouched ? bundled.name : { en: name },
    contactSec,
    reapplyWithinSec: isEmpty ? null : reapply,
    oneStep: typed.oneStep,
    afterwards: typed.afterwards,
    expiry: day(`label.${id}.expiry`, typed.expiry),
  };
}

function lotFrom(id: string, draft: Draft, mend: Mend, day: Day): Lot[] {
  const typed = draft.lots[id] ?? emptyLot;
  const lot = typed.lot.trim();
  if (lot === "" && typed.expiry === "") return [];
  if (lot === "") mend(`lot.${id}.lot`, "lotMissing");
  if (lot.length > 40) mend(`lot.${id}.lot`, "tooLong");
  return [{ item: id, lot, expiry: day(`lot.${id}.expiry`, typed.expiry), known: typed.known ?? "typed" }];
}
