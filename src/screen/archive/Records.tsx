/** Every session of this device, found by lot, product, day, deviation or client; handed out as a table or on paper. */
import { useState } from "react";
import { showDate } from "../../due/calendar";
import { dateAt } from "../../due/zone";
import { foundCsv, lotText } from "../../finding/foundCsv";
import { everything, type Query } from "../../finding/query";
import type { FindingRow } from "../../log/findingRow";
import { DeviationCode } from "../../session/fact";
import { Working } from "../marks/Working";
import type { PageProps } from "../pages/screens";
import { paperWords } from "../papers/words";
import { PersonalPart } from "../personal/PersonalPart";
import { personalWords } from "../personal/words";
import { Section } from "../prepare/Field";
import fields from "../prepare/Prepare.module.css";
import acts from "../sums/parts/Acts.module.css";
import { Entry, Select } from "../sums/parts/Entry";
import { useShared } from "../useModel";
import { logTrouble } from "../words/logTrouble";
import { clientIn, RecallList } from "./RecallList";
import { Unlock } from "./Unlock";
import { useFound } from "./useFound";
import { archiveWords } from "./words";

/** More would be a wall; the table holds all. */
const mostShown = 200;

export function Records({ view }: PageProps) {
  const { archive, keeping, asks, language, words } = useShared();
  const { records: w, lock } = archiveWords(language);
  const papers = paperWords(language);
  const [query, setQuery] = useState<Query>(everything);
  const [turn, setTurn] = useState(0);
  const [mended, setMended] = useState<string | null>(null);
  const found = useFound(archive, query, turn);
  const rows = found?.ok ? found.rows : [];
  const locked = found?.ok ? found.locked : 0;
  const ask = (part: Partial<Query>) => setQuery({ ...query, ...part });
  const today = showDate(dateAt(Date.now(), view.zone));

  const mend = async () => {
    const made = await archive?.mend(true);
    setMended(!made ? null : made.ok ? w.mended(made.made) : logTrouble(words, made.code));
    setTurn(turn + 1);
  };
  const told = (): string | null => {
    if (found === null) return w.searching;
    if (!found.ok) return null;
    if (rows.length > 0) return w.count(rows.length);
    if (locked > 0) return null;
    return query === everything ? w.empty : w.none;
  };
  return (
    <>
      {keeping?.vault && <Unlock vault={keeping.vault} changed={() => setTurn(turn + 1)} />}
      <Section title={w.ask} hint={w.askHint}>
        <search>
          <div className={fields.fields}>
            <Entry label={w.lot} value={query.lot} onChange={(lot) => ask({ lot })} />
            <Entry label={w.product} value={query.product} onChange={(product) => ask({ product })} />
            <Entry label={w.client} value={query.client} onChange={(client) => ask({ client })} />
            <Entry label={w.from} type="date" value={query.from} onChange={(from) => ask({ from })} />
            <Entry label={w.to} type="date" value={query.to} onChange={(to) => ask({ to })} />
            <Select
              label={w.deviation}
              value={query.deviation}
              options={[["", w.any], ...DeviationCode.options.map((code) => [code, papers.deviated[code]] as const)]}
              onChange={(deviation) => ask({ deviation })}
            />
          </div>
        </search>
      </Section>
      <Section title={w.found}>
        {found === null && <Working on={w.searching} />}
        <p role="status" data-testid="found">
          {told()}
        </p>
        {found && !found.ok && <p role="alert">{logTrouble(words, found.code)}</p>}
        {locked > 0 && <p role="alert">{lock.notFound(locked)}</p>}
        <div className={acts.acts}>
          <button
            type="button"
            className={acts.main}
            disabled={rows.length === 0 || locked > 0}
            onClick={() => asks.saveFile("gloveside-sessions.csv", foundCsv(rows), "text/csv")}
          >
            {w.csv}
          </button>
          <RecallList rows={locked > 0 ? [] : rows} query={query} today={today} />
          <button type="button" onClick={() => setQuery(everything)}>
            {w.clear}
          </button>
        </div>
        <ul className={acts.rows} data-testid="sessions">
          {rows.slice(0, mostShown).map((row) => (
            <SessionRow key={row.session} row={row} erased={() => setTurn(turn + 1)} />
          ))}
        </ul>
        {rows.length > mostShown && <p className={acts.note}>{w.more(mostShown, rows.length)}</p>}
        <details className={acts.more}>
          <summary>{w.mend}</summary>
          <div className={acts.acts}>
            <button type="button" onClick={mend}>
              {w.mend}
            </button>
            <p role="status">{mended}</p>
          </div>
        </details>
      </Section>
    </>
  );
}

function SessionRow({ row, erased }: { row: FindingRow; erased: () => void }) {
  const { language } = useShared();
  const [isOpen, setOpen] = useState(false);
  const personal = personalWords(language);
  const w = archiveWords(language).records;
  return (
    <li data-mark={row.isSealed ? "good" : "soon"}>
      <div>
        <b>{clientIn(row, language)}</b> · {row.day} · {row.station} · {row.artist}
        <small>
          {row.protocol} · {row.lots.length === 0 ? w.noLots : row.lots.map(lotText).join("; ")}
        </small>
      </div>
      <em>
        {row.isSealed ? w.sealed : w.unfinished} · {w.deviations(row.deviations.length)}
      </em>
      <details className={acts.whole} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>{personal.title}</summary>
        {isOpen && <PersonalPart session={row.session} hasHeading={false} erased={erased} />}
      </details>
    </li>
  );
}
