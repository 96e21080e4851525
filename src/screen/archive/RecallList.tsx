/** The sessions found, on paper: one line a session, with room to write down who was told and when. */
import type { SpokenLanguage } from "../../announcements/languages";
import { lotText } from "../../finding/foundCsv";
import { everything, type Query } from "../../finding/query";
import type { FindingRow } from "../../log/findingRow";
import { PrintedList } from "../papers/PrintedList";
import { paperWords } from "../papers/words";
import { useShared } from "../useModel";
import { archiveWords } from "./words";

interface Props {
  readonly rows: readonly FindingRow[];
  readonly query: Query;
  readonly today: string;
}

/** The reference, or that it was erased, is not here, or was never given: three different things. */
export function clientIn({ client, clientState: state }: FindingRow, language: SpokenLanguage): string {
  if (state === "kept" || state === "inHeader") return client;
  return paperWords(language).record.clients[state];
}

export function RecallList({ rows, query, today }: Props) {
  const { language } = useShared();
  const { records: w } = archiveWords(language);
  const parts = (Object.keys(everything) as (keyof Query)[]).filter((part) => query[part] !== "");
  const asked = parts.map((part) => `${w[part]} ${query[part]}`).join(", ");
  return (
    <PrintedList
      act={w.print}
      title={w.sheet.title}
      notes={[
        w.sheet.asked(asked === "" ? w.sheet.everything : asked),
        `${w.sheet.made(today)} ${w.count(rows.length)}.`,
        w.sheet.caution,
      ]}
      columns={Object.values(w.sheet.columns)}
      rows={rows.map((row) => ({
        id: row.session,
        cells: [row.day, clientIn(row, language), row.station, row.artist, row.lots.map(lotText).join("; ")],
      }))}
      testId="recall-list"
    />
  );
}
