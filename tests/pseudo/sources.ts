/** What stands on the pages in no language's words: names of bundled protocols, sources, names that are the same in all. */
import { riskFigures } from "../../src/due/exposureRisk";
import { agreedFirstAid } from "../../src/due/exposureRules";
import { places } from "../../src/places/profiles";
import { bundledProtocols } from "../../src/session/protocols";

const texts = [
  ...bundledProtocols.flatMap(({ name, about }) => [name.es, name.en, about.es, about.en]),
  ...places.flatMap(({ lines }) => lines.map(({ source }) => source)),
  ...agreedFirstAid.map(({ source }) => source),
  ...(["HBV", "HCV", "HIV"] as const).flatMap((virus) => riskFigures(virus).map(({ source }) => source)),
  ...["Gloveside", "English", "HTM 01-01", "CDC 2008", "kB", "MB"],
];

export const recordedSources: ReadonlySet<string> = new Set(texts.filter((text) => text !== undefined));
