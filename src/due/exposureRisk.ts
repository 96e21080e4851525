/**
 * Published figures for the risk of one exposure to infected blood. They disagree, by year and by study, so a figure
 * never leaves here alone: each carries its year and source, and a virus is always answered with all of its rows.
 */

import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";

export type Virus = "HBV" | "HCV" | "HIV";

export type RiskFigure = {
  readonly virus: Virus;
  readonly route: "percutaneous" | "mucous membrane";
  readonly percent: string;
  /** Of people without protection by a vaccine. */
  readonly isUnprotected: boolean;
  readonly source: string;
  readonly year: number | null;
  readonly status: "confirmed" | "from memory";
};

const figures: readonly RiskFigure[] = [
  row("HBV", "percutaneous", "6-30", "University of Texas Medical Branch", null, "confirmed"),
  row("HCV", "percutaneous", "1.8 (0-7)", "CDC MMWR 50(RR-11)", 2001, "confirmed"),
  row("HCV", "percutaneous", "0.2", "CDC, citing Egro 2017", 2020, "from memory"),
  row("HCV", "percutaneous", "7.4 (3.9-12.5)", "University of Texas Medical Branch (an outlier)", null, "confirmed"),
  row("HIV", "percutaneous", "0.3 (0.2-0.5)", "CDC, older estimate", null, "confirmed"),
  row("HIV", "percutaneous", "0.23", "CDC, later estimate", null, "from memory"),
  row("HIV", "mucous membrane", "0.09 (0.006-0.5)", "CDC, older estimate", null, "confirmed"),
];

/** All published rows for one virus, never a single number picked from them. */
export function riskFigures(virus: Virus): readonly RiskFigure[] {
  return figures.filter((figure) => figure.virus === virus);
}

export function showRisk(figure: RiskFigure, phrases: SumPhrases = sumsEn): string {
  const { virus, route, percent, isUnprotected, source, year, status } = figure;
  const say = phrases.due;
  const provenance = [source, year ?? say.undated, ...(status === "confirmed" ? [] : [say.fromMemory])].join(", ");
  return `${virus}, ${say.routes[route]}: ${isUnprotected ? say.ifNotProtected(percent) : percent} % [${provenance}]`;
}

function row(
  virus: Virus,
  route: RiskFigure["route"],
  percent: string,
  source: string,
  year: number | null,
  status: RiskFigure["status"],
): RiskFigure {
  return { virus, route, percent, isUnprotected: virus === "HBV", source, year, status };
}
