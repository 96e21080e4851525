/**
 * A protocol of any length that keeps every rule: surfaces cleaned, kept wet, wiped and covered in rounds, work with five
 * events, and the same surfaces taken apart in rounds. Made for measuring.
 */
import type { z } from "zod";
import { type Effect as EffectSchema, Protocol, type Step } from "../../src/session/protocol";

type Effect = z.input<typeof EffectSchema>;
type Written = Pick<Step, "id"> & { effects: Effect[]; skippable: boolean; kind?: "count" | "check"; atWork?: true };

const text = (en: string) => ({ en });
const written = ({ id, effects, skippable, kind = undefined, atWork }: Written) => ({
  id,
  say: text(`Do ${id}.`),
  show: text(id),
  effects,
  skippable,
  ...(kind ? { kind } : {}),
  ...(atWork ? { atWork } : {}),
});
const must = (id: string, ...effects: Effect[]): Written => ({ id, effects, skippable: false });
const gloves = (name: string): Written[] => [
  must(`${name}Off`, { verb: "doff" }),
  must(`${name}Hands`, { verb: "wash" }),
  must(`${name}On`, { verb: "don" }),
];

/** A step for every ten of them: no step does more than a person can keep in mind. */
const tens = (id: string, names: readonly string[], verb: "cover" | "uncover" | "touch"): Written[] =>
  Array.from({ length: Math.ceil(names.length / 10) }, (_, i) =>
    must(`${id}${i}`, ...names.slice(i * 10, i * 10 + 10).map((item): Effect => ({ verb, item }))),
  );

const thing = (id: string, more: object = {}) => ({
  id,
  name: text(id),
  calledAs: text(id),
  role: "surface",
  spaulding: "noncritical",
  use: "reusable",
  starts: { condition: "clean" },
  ...more,
});

/**
 * @param steps about how many steps the lists have together; at least 20
 * @param surfaces how many surfaces the station has
 */
export function longProtocol(steps: number, surfaces: number): Protocol {
  const names = Array.from({ length: surfaces }, (_, i) => `surface${i}`);
  const setUp = [must("firstHands", { verb: "wash" }), must("firstGloves", { verb: "don" })];
  const fixed = 20;
  const rounds = Math.max(1, Math.ceil((steps - fixed) / 14));
  const groups = Array.from({ length: rounds }, (_, r) =>
    names.filter((_n, i) => i % rounds === r % Math.max(1, Math.min(rounds, surfaces))),
  );
  for (const [r, group] of groups.entries()) {
    // A list longer than its surfaces treats them again; only the last treatment is followed by the covers.
    setUp.push(
      must(`clean${r}`, ...group.map((item): Effect => ({ verb: "preClean", item }))),
      must(`wet${r}`, ...group.map((item): Effect => ({ verb: "apply", item, product: "spray" }))),
      ...gloves(`round${r}`),
      must(`wipe${r}`, ...group.map((item): Effect => ({ verb: "wipe", item }))),
      { id: `look${r}`, effects: [], skippable: true, kind: "check" },
    );
  }
  setUp.push(
    ...tens("cover", names, "cover"),
    must("ink", { verb: "touch", item: "cup" }, { verb: "touch", item: "ink" }, { verb: "takeAway", item: "ink" }),
    must("prepare", { verb: "apply", item: "skin", product: "antiseptic" }),
    ...gloves("sterile"),
    must("openNeedle", { verb: "open", item: "needle" }),
    must("begin", { verb: "breakSkin", item: "needle" }),
    ...tens("work", names, "touch"),
  );
  const breakdown = [
    must("sharps", { verb: "discard", item: "needle", into: "sharps", all: true }),
    { id: "count", effects: [], skippable: false, kind: "count" as const },
    must("waste", { verb: "discard", item: "cup", into: "contaminated" }),
    ...tens("uncover", names, "uncover"),
  ];
  for (const [r, group] of groups.entries()) {
    breakdown.push(
      must(`endClean${r}`, ...group.map((item): Effect => ({ verb: "preClean", item }))),
      must(`endWet${r}`, ...group.map((item): Effect => ({ verb: "apply", item, product: "spray" }))),
      ...gloves(`end${r}`),
      must(`endWipe${r}`, ...group.map((item): Effect => ({ verb: "wipe", item }))),
      { id: `endLook${r}`, effects: [], skippable: true, kind: "check" },
    );
  }
  breakdown.push(must("lastOff", { verb: "doff" }), must("lastHands", { verb: "wash" }));
  const back = (id: string, ...effects: Effect[]): Written => ({ ...must(id, ...effects), atWork: true });
  const held: Effect = { verb: "touch", item: names[0] ?? "cup" };
  const flows = {
    freshGloves: [...gloves("fresh"), back("freshGoOn", held)],
    tornGlove: [...gloves("torn"), back("tornGoOn", held)],
    newNeedle: [
      must("oldNeedle", { verb: "discard", item: "needle", into: "sharps" }),
      ...gloves("needleGloves"),
      must("newNeedle", { verb: "open", item: "needle" }),
      back("needleGoOn", held, { verb: "breakSkin", item: "needle" }),
    ],
    dropped: [...gloves("dropped"), back("droppedGoOn", held)],
    touched: [...gloves("touched"), back("touchedGoOn", held)],
  };
  return Protocol.parse({
    format: "gloveside-protocol",
    formatVersion: 1,
    id: "long",
    version: "1.0.0",
    name: text("Long"),
    about: text("Made for measuring."),
    items: [
      ...names.map((id) => thing(id)),
      thing("needle", { role: "sharp", spaulding: "critical", use: "singleUse", starts: { condition: "sterile" } }),
      thing("cup", { role: "supply", use: "singleUse" }),
      thing("ink", { role: "bottle" }),
      thing("container", { role: "container" }),
      thing("skin", { role: "skin", spaulding: "semicritical" }),
    ],
    products: [
      {
        id: "spray",
        use: "surfaceDisinfectant",
        label: {
          name: text("A"),
          contactSec: 60,
          reapplyWithinSec: null,
          oneStep: false,
          afterwards: "wipe",
          expiry: null,
        },
      },
      {
        id: "antiseptic",
        use: "skinAntiseptic",
        label: {
          name: text("B"),
          contactSec: 60,
          reapplyWithinSec: null,
          oneStep: false,
          afterwards: "airDry",
          expiry: null,
        },
      },
    ],
    setUp: setUp.map(written),
    events: Object.entries(flows).map(([event, list]) => ({ event, steps: list.map(written) })),
    dressing: [...gloves("dressing"), must("wrap", { verb: "cover", item: "skin" }), must("sheet")].map(written),
    breakdown: breakdown.map(written),
    resuming: [
      ...gloves("resuming"),
      must("resumingSharps", { verb: "discard", item: "needle", into: "sharps", all: true }),
      ...gloves("resumingFresh"),
      back("resumingNeedle", { verb: "open", item: "needle" }),
    ].map(written),
  });
}
