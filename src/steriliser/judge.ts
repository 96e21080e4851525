/**
 * The verdict on a cycle: first, was the band held unbroken for its time; beside it F0, and whether it was steam.
 * A large F0 with a broken hold fails. A hold in air or superheat is not accepted either.
 */
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { type Band, inBand, showBand } from "./bands";
import { type Break, defaultMostGapMs, findHold, type Hold, lengthMs } from "./hold";
import { defaultLethality, type Lethality, type LethalityChoice, lethality, rate } from "./lethality";
import type { Reading } from "./reading";
import { checkSteam, defaultToleranceK, type SteamCheck } from "./steamCheck";

export type CycleVerdict = {
  readonly accepted: boolean;
  readonly code: "held" | "not-held" | "held-in-air" | "held-in-superheat";
  readonly band: Band;
  readonly hold: Hold | null;
  readonly heldMs: number;
  readonly breaks: readonly Break[];
  readonly lethality: Lethality;
  readonly steam: SteamCheck;
  /** A file from the machine, or what someone read off it. */
  readonly known: "measured" | "said";
  readonly mostGapMs: number;
};

export type JudgeChoice = {
  readonly mostGapMs?: number;
  readonly toleranceK?: number;
  readonly lethality?: LethalityChoice;
};

/** Judges a recorded cycle. Removing an in-band reading never makes the verdict better. */
export function judgeCycle(readings: readonly Reading[], band: Band, choice: JudgeChoice = {}): CycleVerdict {
  const mostGapMs = choice.mostGapMs ?? defaultMostGapMs;
  const { longest, breaks } = findHold(readings, band, mostGapMs);
  const during = readings.filter((r) => longest !== null && r.tMs >= longest.fromMs && r.tMs <= longest.toMs);
  const steam = checkSteam(during, choice.toleranceK ?? defaultToleranceK);
  const heldMs = lengthMs(longest);
  return {
    ...conclude(heldMs >= band.holdMs, steam),
    band,
    hold: longest,
    heldMs,
    breaks,
    lethality: lethality(readings, choice.lethality ?? defaultLethality),
    steam,
    known: "measured",
    mostGapMs,
  };
}

/** What a person read off the display: the coolest and hottest during the plateau, and for how long. */
export type HandEntry = {
  readonly coolestC: number;
  readonly hottestC: number;
  readonly heldMs: number;
  readonly kPaAbs: number | null;
};

/** Judges a hand entry by its coolest reading; F0 is then a lower bound for the plateau alone. */
export function judgeHandEntry(entry: HandEntry, band: Band, choice: JudgeChoice = {}): CycleVerdict {
  const within = entry.coolestC <= entry.hottestC && inBand(entry.coolestC, band) && inBand(entry.hottestC, band);
  const ends = [entry.coolestC, entry.hottestC].map((celsius, i) => ({
    tMs: i * entry.heldMs,
    celsius,
    kPaAbs: entry.kPaAbs,
  }));
  const steam = checkSteam(ends, choice.toleranceK ?? defaultToleranceK);
  const how = choice.lethality ?? defaultLethality;
  return {
    ...conclude(within && entry.heldMs >= band.holdMs, steam),
    band,
    hold: within ? { fromMs: 0, toMs: entry.heldMs } : null,
    heldMs: within ? entry.heldMs : 0,
    breaks: [],
    lethality: { ...how, minutes: (entry.heldMs / 60_000) * rate(entry.coolestC, how) },
    steam,
    known: "said",
    mostGapMs: choice.mostGapMs ?? defaultMostGapMs,
  };
}

/** One sentence for the log, the screen and the voice. F0 comes second, with what it was computed by. */
export function sayVerdict(v: CycleVerdict, phrases: SumPhrases = sumsEn): string {
  const say = phrases.steriliser;
  const { lethality: f } = v;
  const head = say.verdicts[v.code](showBand(v.band, phrases), cut(v.heldMs / 60_000));
  const beside = say.beside(cut(f.minutes), f.method, f.referenceC, f.zK);
  const doubt = v.steam.finding === "unknown" ? ` ${say.airUnchecked}` : "";
  return `${head}. ${beside}.${doubt}${v.known === "said" ? ` ${say.byHand}` : ""}`;
}

/** One decimal, cut and never rounded up: 2.96 minutes must not read as 3.0. */
function cut(minutes: number): string {
  return (Math.floor(minutes * 10) / 10).toFixed(1);
}

function conclude(held: boolean, steam: SteamCheck): Pick<CycleVerdict, "accepted" | "code"> {
  if (!held) return { accepted: false, code: "not-held" };
  if (steam.finding === "air") return { accepted: false, code: "held-in-air" };
  if (steam.finding === "superheat") return { accepted: false, code: "held-in-superheat" };
  return { accepted: true, code: "held" };
}
