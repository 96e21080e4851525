/**
 * The application identifiers that are met on packs, and how long what follows them is. From the GS1 Application
 * Identifier Syntax Dictionary. A length of our own for an unknown one would be a guess, so there is none.
 */

export interface Identifier {
  readonly ai: string;
  readonly least: number;
  readonly most: number;
  /** Ends by its length alone; no separator is needed after it. */
  readonly isPredefined: boolean;
  readonly isDigits: boolean;
}

const fixed = (ai: string, length: number): Identifier => ({
  ...{ ai, least: length, most: length },
  ...{ isPredefined: true, isDigits: true },
});
const upTo = (ai: string, most: number, isDigits = false): Identifier => ({
  ...{ ai, least: 1, most },
  ...{ isPredefined: false, isDigits },
});

const known: readonly Identifier[] = [
  fixed("00", 18),
  fixed("01", 14),
  fixed("02", 14),
  ...["11", "12", "13", "15", "16", "17"].map((ai) => fixed(ai, 6)),
  fixed("20", 2),
  ...["10", "21", "22"].map((ai) => upTo(ai, 20)),
  upTo("30", 8, true),
  upTo("37", 8, true),
  ...["240", "241", "250", "251", "253", "254", "400", "403", "7021"].map((ai) => upTo(ai, 30)),
  ...["710", "711", "712", "713", "714", "715", "420", "7022"].map((ai) => upTo(ai, 20)),
  upTo("8008", 12, true),
  upTo("8012", 20),
  upTo("8020", 25),
  ...["90"].map((ai) => upTo(ai, 30)),
  ...["91", "92", "93", "94", "95", "96", "97", "98", "99"].map((ai) => upTo(ai, 90)),
  { ai: "7003", least: 10, most: 10, isPredefined: false, isDigits: true },
  { ai: "8006", least: 18, most: 18, isPredefined: false, isDigits: true },
  { ai: "8026", least: 18, most: 18, isPredefined: false, isDigits: true },
];

const byAi = new Map(known.map((identifier) => [identifier.ai, identifier]));

/** Measures 310n to 369n: four digits of identifier, six of value. Parties 410 to 417: thirteen. */
function inARange(data: string, at: number): Identifier | null {
  const three = data.slice(at, at + 3);
  if (/^3[1-6]\d$/.test(three) && /^\d$/.test(data[at + 3] ?? "")) return fixed(data.slice(at, at + 4), 6);
  return /^41[0-7]$/.test(three) ? fixed(three, 13) : null;
}

/** The identifier that begins here; null where it is none that we know. */
export function identifierAt(data: string, at: number): Identifier | null {
  for (const length of [2, 3, 4]) {
    const found = byAi.get(data.slice(at, at + length));
    if (found) return found;
  }
  return inARange(data, at);
}
