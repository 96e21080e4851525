/**
 * The artist's own report of an accident: medical information, kept apart from the session's record and locked with a
 * passphrase of its own. What the facts tell is filled in; the rest is the artist's. Fields: 29 CFR 1910.1030(h)(5) sharps
 * injury log (type and brand of the device, where, how it happened), first aid and follow-up beside it.
 */
import { z } from "zod";
import type { RecordFile } from "../export/recordFile";
import { lock, unlock } from "../locked";
import { readWallTime } from "../log/wallTime";
import type { Phase } from "../session/fact";
import { fold } from "../session/fold";
import { worldAtStart } from "../session/world";

const Line = z.string().max(200);
const Prose = z.string().max(2000);

export const ExposureReport = z.strictObject({
  format: z.literal("gloveside-exposure"),
  formatVersion: z.literal(1),
  /** Local date and time at the place, "2026-11-25T09:41". */
  at: Line,
  zone: Line,
  artist: Line,
  place: Line,
  phase: Line,
  device: Line,
  lot: Line,
  bodyPart: Line,
  how: Prose,
  firstAid: Prose,
  source: Prose,
  clinician: Prose,
});
export type ExposureReport = z.infer<typeof ExposureReport>;

export const emptyReport = (zone: string): ExposureReport => ({
  format: "gloveside-exposure",
  formatVersion: 1,
  at: "",
  zone,
  artist: "",
  place: "",
  phase: "",
  device: "",
  lot: "",
  bodyPart: "",
  how: "",
  firstAid: "",
  source: "",
  clinician: "",
});

/**
 * @param phases what each phase is called in the reader's language.
 * @returns one report for each accident of the session, filled in as far as its facts tell. Pure.
 */
export function reportsFrom(
  { header, entries }: Pick<RecordFile, "header" | "entries">,
  phases: Readonly<Record<Phase, string>>,
): readonly ExposureReport[] {
  const { input, rules } = header;
  const sharps = input.protocol.items.filter((item) => item.role === "sharp");
  let world = worldAtStart(input, rules);
  return entries.flatMap(({ fact, at }) => {
    const before = world;
    world = fold(input, world, fact);
    if (fact.type !== "v1.ExposureReported" || readWallTime(at) === null) return [];
    const used = sharps.filter((item) => before.station.items[item.id]?.opened);
    const named = (text: { en: string; es?: string | undefined }) => text[input.language] ?? text.en;
    const lots = used.flatMap(({ id }) => before.lots[id]?.lot ?? []);
    return [
      {
        ...emptyReport(input.zone),
        at: at.slice(0, 16),
        artist: input.artist,
        place: input.station,
        phase: phases[before.phase],
        device: used
          .map(({ name }) => named(name))
          .join(", ")
          .slice(0, 200),
        lot: lots.join(", ").slice(0, 200),
      },
    ];
  });
}

/** @param passphrase the artist's own, and no other. `work` is for tests. */
export async function lockReport(report: ExposureReport, passphrase: string, work?: number) {
  const locked = await lock("exposure-report", passphrase, new TextEncoder().encode(JSON.stringify(report)), work);
  return locked.ok ? { ok: true as const, text: `${JSON.stringify(locked.locked, null, 2)}\n` } : locked;
}

export type OpenedReport = { ok: true; report: ExposureReport } | { ok: false; code: string; message: string };

/** @param text of a file from anywhere; it is not believed. Never throws. */
export async function openReport(text: string, passphrase: string): Promise<OpenedReport> {
  const notOne = { ok: false, code: "not-a-lock", message: "This is not a file that was locked here." } as const;
  try {
    const opened = await unlock("exposure-report", passphrase, JSON.parse(text));
    if (!opened.ok) return opened;
    const read = ExposureReport.safeParse(JSON.parse(new TextDecoder().decode(opened.bytes)));
    return read.success ? { ok: true, report: read.data } : notOne;
  } catch {
    return notOne;
  }
}
