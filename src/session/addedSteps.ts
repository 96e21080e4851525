/**
 * Steps that no protocol writes, since they depend on what went wrong: what the session before left unready is the
 * beginning of the set-up, and what a slip soiled, and the breakdown forgets, is added to the breakdown. Each item gets
 * the process of its class (Spaulding 1968; CDC 2008, Table 1): noncritical cleaned, wet and wiped; critical put aside
 * to be sterilised; porous and single-use thrown away.
 */
import type { Effect, Item, Label, Protocol, Step } from "./protocol";
import { isSkin } from "./skin";

/** Ids that a protocol may not use for its own steps. */
export const addedPrefixes = ["carriedOver", "added"] as const;
export const isAdded = (id: string): boolean => addedPrefixes.some((p) => id.startsWith(p));

type Fate = "treated" | "aside" | "thrown";

function fateOf(item: Item): Fate {
  if (item.use === "singleUse" || item.porous) return "thrown";
  return item.spaulding === "noncritical" ? "treated" : "aside";
}

const step = (id: string, say: readonly [string, string], items: readonly Item[], effects: readonly Effect[]): Step => {
  const names = (of: "en" | "es") => items.map((i) => i.calledAs[of] ?? i.calledAs.en).join(", ");
  const shown = (words: string, of: "en" | "es") =>
    items.length === 0 ? words : `${words.replace(/\.$/, "")}: ${names(of)}.`;
  return {
    id,
    kind: "do",
    say: { en: say[0], es: say[1] },
    show: { en: shown(say[0], "en"), es: shown(say[1], "es") },
    effects: [...effects],
    handsOnSec: 30,
    skippable: false,
  };
};

const texts = {
  hands: [
    "Wash your hands for forty to sixty seconds, and dry them.",
    "Lávate las manos de cuarenta a sesenta segundos y sécalas.",
  ],
  on: ["Put on fresh gloves.", "Ponte guantes nuevos."],
  off: ["Take your gloves off, inside out.", "Quítate los guantes, del revés."],
  thrown: ["Throw away what was left lying.", "Tira lo que quedó a la vista."],
  aside: ["Put aside, to be sterilised, what was left.", "Aparta para esterilizar lo que quedó."],
  wet: ["Clean what was left unready, and wet it.", "Limpia lo que quedó sin preparar y mójalo."],
  wiped: ["Wipe dry what was left unready.", "Seca lo que quedó sin preparar."],
} as const;

/** Every sentence of them, for those who record what is spoken. */
export const addedTexts = Object.values(texts).map(([en, es]) => ({ en, es }));

const changed = (name: string): Step[] => [
  step(`${name}Off`, texts.off, [], [{ verb: "doff" }]),
  step(`${name}Hands`, texts.hands, [], [{ verb: "wash" }]),
  step(`${name}On`, texts.on, [], [{ verb: "don" }]),
];

/** Gloved all along, and gloved at the end. What is thrown or put aside is another piece than the one used next. */
function dealtWith(name: string, protocol: Protocol, items: readonly Item[], isGone: boolean): Step[] {
  const of = (fate: Fate) => items.filter((item) => !isSkin(item) && fateOf(item) === fate);
  const product = protocol.products.find((p) => p.use === "surfaceDisinfectant");
  const [thrown, aside, treated] = [of("thrown"), of("aside"), product ? of("treated") : []];
  const gone = (some: readonly Item[], into: "contaminated" | "reprocess"): Effect[] =>
    isGone
      ? some.map(({ id, role }) => ({
          verb: "discard",
          item: id,
          into: role === "sharp" ? "sharps" : into,
          all: false,
        }))
      : [];
  const each = (effects: (id: string) => Effect[]): Effect[] => treated.flatMap(({ id }) => effects(id));
  const used = product?.id ?? "";
  const wets = each((item) => [
    { verb: "uncover", item },
    { verb: "preClean", item },
    { verb: "apply", item, product: used },
  ]);
  const wiped: Step[] =
    product?.label.afterwards === "airDry"
      ? []
      : [
          step(
            `${name}Wipe`,
            texts.wiped,
            treated,
            each((item) => [{ verb: "wipe", item }]),
          ),
        ];
  return [
    ...(thrown.length > 0 ? [step(`${name}Throw`, texts.thrown, thrown, gone(thrown, "contaminated"))] : []),
    ...(aside.length > 0 ? [step(`${name}Aside`, texts.aside, aside, gone(aside, "reprocess"))] : []),
    ...(treated.length > 0 ? [step(`${name}Wet`, texts.wet, treated, wets), ...changed(`${name}Fresh`), ...wiped] : []),
  ];
}

/** Before the first step of the set-up; hands are washed and bare at the end, as at its beginning. */
export function carriedOverSteps(protocol: Protocol, carriedOver: readonly string[]): Step[] {
  const items = protocol.items.filter((item) => carriedOver.includes(item.id));
  const steps = dealtWith("carriedOver", protocol, items, false);
  if (steps.length === 0) return [];
  const [, hands, on] = changed("carriedOver") as [Step, Step, Step];
  const [off, last] = changed("carriedOverLast") as [Step, Step, Step];
  return [hands, on, ...steps, off, last];
}

/** Items that these steps of the breakdown make ready, or throw out. */
export const treatedBy = (steps: readonly Step[]): ReadonlySet<string> =>
  new Set(steps.flatMap((s) => s.effects.flatMap((e) => (e.verb === "wipe" || e.verb === "discard" ? [e.item] : []))));

/** Where what a slip soiled is put in: before the last gloves come off. Null where there is no such place. */
export function placeForAdded(breakdown: readonly Step[]): number | null {
  const at = breakdown.findLastIndex((s) => s.effects.some((e) => e.verb === "doff"));
  return at < 0 ? null : at;
}

const isOn = (items: readonly string[]) => (e: Effect) => "item" in e && items.includes(e.item);

/** How a soiled thing stands when it is asked what makes it ready. */
export interface Soiled {
  readonly id: string;
  readonly isCovered: boolean;
  /** Under a clock that can start again. */
  readonly isWet: boolean;
  readonly label: Pick<Label, "oneStep" | "afterwards"> | undefined;
}

/**
 * Whether these steps throw it out, or do to it all that makes it ready, one after the other: uncovered, cleaned of what
 * soiled it unless the label cleans in the same step (CDC 2008), wetted, wiped.
 */
export function makeReady(steps: readonly Step[], { id, isCovered, isWet, label }: Soiled): boolean {
  const verbs = steps.flatMap((s) => s.effects.filter(isOn([id])).map((e) => e.verb));
  const needed: Effect["verb"][] = [
    ...(isCovered ? (["uncover"] as const) : []),
    ...(label?.oneStep ? [] : (["preClean"] as const)),
    ...(isWet ? [] : (["apply"] as const)),
    ...(label?.afterwards === "airDry" ? [] : (["wipe"] as const)),
  ];
  let at = -1;
  const isDone = (verb: Effect["verb"]): boolean => {
    at = verbs.indexOf(verb, at + 1);
    return at >= 0;
  };
  return verbs.includes("discard") || needed.every(isDone);
}

const treating: ReadonlySet<Effect["verb"]> = new Set(["uncover", "preClean", "apply", "wipe", "rinse"]);

/**
 * What is added has its whole process there, so what was still to be done to it before is passed over.
 * @param breakdown the steps of the protocol's breakdown, in the order in which they are walked
 * @param asBefore15 as rules before 1.5.0 had it (./rules)
 */
export function withAdded(
  protocol: Protocol,
  breakdown: readonly Step[],
  added: readonly string[],
  asBefore15 = false,
): readonly Step[] {
  const at = placeForAdded(breakdown);
  if (added.length === 0 || at === null) return breakdown;
  const items = protocol.items.filter((item) => added.includes(item.id));
  const isAddedOne = isOn(added);
  const passing = (step: Step): Step => ({
    ...step,
    effects: step.effects.filter((e) => !(treating.has(e.verb) && isAddedOne(e))),
  });
  const own = asBefore15 ? breakdown : breakdown.map(passing);
  return [...own.slice(0, at), ...dealtWith("added", protocol, items, true), ...own.slice(at)];
}

/** What carried over counts as soiled; where another piece takes its place, that one is as the protocol says. */
export const startsSoiled = (item: Item): boolean => fateOf(item) === "treated";
