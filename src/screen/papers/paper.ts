/** What a paper needs of a record, looked up once: names in its language, times by its own wall clock, what it comes to. */
import type { RecordFile } from "../../export/recordFile";
import { summaryBy } from "../../export/replay/replay";
import type { Summary } from "../../log";
import { clientIn } from "../../log/personal";
import { stepById } from "../../session/world";
import { type PaperWords, paperWords } from "./words";

export interface Paper {
  readonly record: RecordFile;
  readonly summary: Summary;
  readonly words: PaperWords;
  /** An item, a product or a step by name; an unknown id stands for itself. */
  nameOf(id: string): string;
  stepName(id: string): string;
  /** "09:41", as the wall clock of the station said. */
  clockAt(n: number): string;
  readonly day: string;
  /** The client's reference, or that it was erased or is not here. */
  readonly client: string;
  readonly head: string;
}

/** Deviations in the order of the record, with the number they carry on every paper. */
export const numbered = ({ summary }: Paper) => summary.deviations.map((one, at) => ({ ...one, no: at + 1 }));

/** @param head the last head of the chain; a sealed record's seal names it. */
export function paperOf(record: RecordFile, head = record.closing?.seal.head ?? ""): Paper {
  const { header, entries, closing } = record;
  const { input, rules } = header;
  const words = paperWords(input.language);
  const client = clientIn(header, record.personal);
  const inLanguage = (text: { en: string; es?: string | undefined }) => text[input.language] ?? text.en;
  const names = new Map([
    ...input.protocol.items.map(({ id, name }) => [id, inLanguage(name)] as const),
    ...Object.entries(input.labels).map(([id, { name }]) => [id, inLanguage(name)] as const),
  ]);
  return {
    record,
    head,
    summary: closing?.summary ?? summaryBy(rules, input, entries),
    words,
    client: "reference" in client ? client.reference : words.record.clients[client.state],
    nameOf: (id) => names.get(id) ?? id,
    stepName(id) {
      const step = stepById(input, id);
      return step ? inLanguage(step.show) : id;
    },
    clockAt: (n) => entries[n - 1]?.at.slice(11, 16) ?? "",
    day: entries[0]?.at.slice(0, 10) ?? "",
  };
}
