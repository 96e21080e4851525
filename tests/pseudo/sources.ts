/**
 * What stands on the pages in no phrasebook's words: what bundled protocols name and say, the words that the ear hears, what
 * belongs to the rules themselves (first aid, sources), and names that are the same in all languages.
 */
import { riskFigures } from "../../src/due/exposureRisk";
import { agreedFirstAid } from "../../src/due/exposureRules";
import { exposureWords } from "../../src/due/exposureWords";
import { publishedDurations } from "../../src/hands/durations";
import { wordings } from "../../src/intent/wording";
import { cautionSources } from "../../src/mixing/cautions";
import { places } from "../../src/places/profiles";
import { bundledProtocols } from "../../src/session/protocols";

const texts = [
  ...bundledProtocols.flatMap(({ name, about }) => [name.es, name.en, about.es, about.en]),
  ...places.flatMap(({ lines }) => lines.map(({ source }) => source)),
  ...bundledProtocols.flatMap(({ items }) => items.map(({ name }) => name.es)),
  ...Object.values(wordings.es.addresses),
  ...agreedFirstAid.flatMap((line) => [line.source, exposureWords("es").firstAid(line)]),
  ...publishedDurations.flatMap(({ source, status }) => [source, `(${status})`]),
  ...Object.values(cautionSources),
  ...(["HBV", "HCV", "HIV"] as const).flatMap((virus) => riskFigures(virus).map(({ source }) => source)),
  ...["Gloveside", "English", "Español", "HTM 01-01", "CDC 2008", "kB", "MB"],
];

export const recordedSources: ReadonlySet<string> = new Set(texts.filter((text) => text !== undefined));
