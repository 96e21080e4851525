/**
 * What a session can be found by. Written in the same transaction as what it is of, so that it never says less than the
 * log; it can always be made again from the log, and proves nothing by itself.
 */
import type { SessionFact } from "../session/fact";
import type { Text } from "../session/protocol";
import { dayIn } from "./dayIn";
import type { Header } from "./header";
import type { Client } from "./personal";
import type { Closing } from "./seal";
import { madeAtMs } from "./uuidv7";

export interface FoundLot {
  readonly item: string;
  /** The item's name in the language of the session, as the protocol has it. */
  readonly name: string;
  readonly lot: string;
  readonly expiry: string | null;
}

export interface FindingRow {
  readonly session: string;
  /** The day it began at its station, "2026-11-25". */
  readonly day: string;
  readonly station: string;
  readonly artist: string;
  /** Empty where it is not known, or not any more. */
  readonly client: string;
  readonly clientState: Client["state"];
  readonly protocol: string;
  /** The key it was kept under. */
  readonly device: string;
  readonly isSealed: boolean;
  readonly lots: readonly FoundLot[];
  /** Names of the labels in use and of the things with a lot, in the language of the session. */
  readonly products: readonly string[];
  /** Codes, each once. */
  readonly deviations: readonly string[];
  readonly lotKeys: readonly string[];
  /** The same names in every language that they have. */
  readonly productKeys: readonly string[];
  readonly clientKey: string;
}

/** Lots are compared without case, spaces and the signs between: "N 204", "n-204" and "N204" are one. */
export const lotKey = (text: string): string => text.toUpperCase().replace(/[^\p{L}\p{N}]/gu, "");
export const nameKey = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, " ");

const distinct = <T>(all: readonly T[]): readonly T[] => [...new Set(all)];

function row(
  header: Header,
  client: Client,
  isSealed: boolean,
  lots: readonly FoundLot[],
  deviations: readonly string[],
): FindingRow {
  const { session, device, input } = header;
  const labels = Object.values(input.labels).map(({ name }) => name);
  const products = distinct([...labels.map((name) => nameIn(header, name)), ...lots.map(({ name }) => name)]);
  const things = lots.flatMap(({ item }) => itemOf(header, item)?.name ?? []);
  const everyName = [...labels, ...things].flatMap((name) => Object.values(name).flatMap((one) => one ?? []));
  return {
    ...{ session, device, isSealed, lots, products },
    day: dayIn(input.zone, madeAtMs(session)),
    station: input.station,
    artist: input.artist,
    ...ofClient(client),
    protocol: nameIn(header, input.protocol.name),
    deviations: distinct(deviations),
    // A mark that is all signs is compared as it stands.
    lotKeys: distinct(lots.map(({ lot }) => lotKey(lot) || lot)),
    productKeys: distinct([...products, ...everyName].map(nameKey)),
  };
}

function ofClient(client: Client): Pick<FindingRow, "client" | "clientState" | "clientKey"> {
  const reference = "reference" in client ? client.reference : "";
  return { client: reference, clientState: client.state, clientKey: nameKey(reference) };
}

/** The other way round: what the row says of its client. */
export const clientFound = ({ client, clientState }: FindingRow): Client =>
  clientState === "kept" || clientState === "inHeader"
    ? { state: clientState, reference: client }
    : { state: clientState };

/** The row without its client: nothing finds it by them any more. */
export const withoutClient = (before: FindingRow): FindingRow => ({ ...before, ...ofClient({ state: "erased" }) });

const nameIn = ({ input }: Header, name: Text): string => name[input.language] ?? name.en;
const itemOf = ({ input }: Header, item: string) => input.protocol.items.find(({ id }) => id === item);

function named(header: Header, { item, lot, expiry }: { item: string; lot: string; expiry: string | null }): FoundLot {
  const thing = itemOf(header, item);
  return { item, name: thing ? nameIn(header, thing.name) : item, lot, expiry };
}

export const atOpening = (header: Header, client: Client): FindingRow =>
  row(
    header,
    client,
    false,
    header.input.lots.map((lot) => named(header, lot)),
    [],
  );

export const isFoundBy = ({ type }: SessionFact): boolean => type === "v1.LotGiven" || type === "v1.Deviation";

export function withBatch(before: FindingRow, header: Header, facts: readonly SessionFact[]): FindingRow {
  const lots = facts.flatMap((fact) => (fact.type === "v1.LotGiven" ? [named(header, fact)] : []));
  const deviations = facts.flatMap((fact) => (fact.type === "v1.Deviation" ? [fact.code] : []));
  const { client, clientState, clientKey } = before;
  return {
    ...row(header, { state: "none" }, false, [...before.lots, ...lots], [...before.deviations, ...deviations]),
    ...{ client, clientState, clientKey },
  };
}

/** As the summary says: what was taken back is no deviation any more. */
export const atSeal = (header: Header, client: Client, { summary }: Closing): FindingRow =>
  row(
    header,
    client,
    true,
    summary.lots.map((lot) => named(header, lot)),
    summary.deviations.flatMap(({ code, takenBack }) => (takenBack ? [] : [code])),
  );

/** The whole row anew, from the log and what stands beside it. */
export function rowFrom(
  header: Header,
  client: Client,
  facts: readonly SessionFact[],
  closing: Closing | null,
): FindingRow {
  if (closing) return atSeal(header, client, closing);
  return withBatch(atOpening(header, client), header, facts);
}
