/** The sessions found, as a table (RFC 4180): one row a session, its lots in one cell. Formulas are made inert. */
import { csv } from "../export/csv";
import type { FindingRow } from "../log/findingRow";

const columns = ["day", "client", "station", "artist", "protocol", "lots", "products", "deviations", "sealed"] as const;

export const foundCsv = (rows: readonly FindingRow[]): string =>
  csv([
    [...columns, "session", "device"],
    ...rows.map((row) => [
      ...[row.day, clientText(row), row.station, row.artist, row.protocol, row.lots.map(lotText).join("; ")],
      ...[row.products.join("; "), row.deviations.join("; "), row.isSealed ? "sealed" : "unfinished"],
      ...[row.session, row.device],
    ]),
  ]);

/** A table is read by programs too: the code of its state where there is no reference. */
const clientText = ({ client, clientState }: FindingRow): string => (client === "" ? `(${clientState})` : client);

export const lotText = ({ name, lot, expiry }: FindingRow["lots"][number]): string =>
  `${name} ${lot}${expiry === null ? "" : ` (${expiry})`}`;
