/** Files that are no protocol: one clear message, where, and how to mend it. Fuzzed from the schema and from raw JSON. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { longProtocol } from "../../tests/bench/longProtocol";
import { anyOf } from "../../tests/support/fromSchema";
import { runs } from "../../tests/support/runs";
import { checkProtocol } from "../check/checkProtocol";
import { tell } from "../check/telling";
import { Protocol } from "./protocol";
import { conventionBooth } from "./protocols/conventionBooth";
import { asProtocol, type ReadProtocol, readProtocol } from "./readProtocol";
import { troubleWords } from "./troubleWords";

interface Loose {
  readonly [key: string]: Loose;
}
const whole = JSON.stringify(conventionBooth);

/** The bundled protocol with one thing wrong. */
function spoilt(spoil: (p: Loose) => void): ReadProtocol {
  const copy = JSON.parse(whole) as Loose;
  spoil(copy);
  return readProtocol(JSON.stringify(copy));
}
const set = (at: object | undefined, key: string, value: unknown): void => {
  (at as Record<string, unknown>)[key] = value;
};
const steps = (p: Loose) => p.setUp as unknown as { id: string; effects: Record<string, unknown>[] }[];

/** One message, on one line, short enough to read, that begins with a capital or a quotation and points somewhere. */
function isClear(read: ReadProtocol): void {
  if (read.ok) return;
  const { at, message } = read.trouble;
  expect(at).toMatch(/^\$/);
  expect(message).toMatch(/^[A-Z"0-9-].*[.]$/);
  expect(`${at}${message}`).not.toMatch(/[\n\r\u2028]/);
  expect(message.length).toBeLessThan(700);
  expect(message).not.toMatch(/undefined|\[object|at .*\.ts|regex|Invalid/);
}

describe("a file that is no protocol", () => {
  const cases: readonly [string, (p: Loose) => void, string, string][] = [
    [
      "an unknown item",
      (p) => set(steps(p)[3], "effects", [{ verb: "touch", item: "ghost" }]),
      "unknown-item",
      "$.setUp[3].effects[0].item",
    ],
    [
      "an unknown effect",
      (p) => set(steps(p)[3], "effects", [{ verb: "polish", item: "lamp" }]),
      "wrong-shape",
      "$.setUp[3].effects[0].verb",
    ],
    ["a duplicate step", (p) => set(steps(p)[3], "id", steps(p)[2]?.id), "duplicate-id", "$.setUp[3].id"],
    ["a duplicate item", (p) => set(p.items?.[1], "id", p.items?.[0]?.id), "duplicate-id", "$.items[1].id"],
    ["a duplicate product", (p) => set(p.products?.[1], "id", p.products?.[0]?.id), "duplicate-id", "$.products[1].id"],
    [
      "two flows of one event",
      (p) => set(p.events?.[1], "event", p.events?.[0]?.event),
      "duplicate-id",
      "$.events[1].event",
    ],
    [
      "a cyclic order",
      (p) => {
        set(steps(p)[1], "after", steps(p)[2]?.id);
        set(steps(p)[2], "after", steps(p)[1]?.id);
      },
      "wrong-shape",
      "$.setUp[1].after",
    ],
    [
      "contact time without a product",
      (p) => set(steps(p)[3], "effects", [{ verb: "apply", item: "lamp" }]),
      "wrong-shape",
      "$.setUp[3].effects[0].product",
    ],
    [
      "a surface disinfectant on skin",
      (p) => set(steps(p)[3], "effects", [{ verb: "apply", item: "skin", product: "surfaceWipesC" }]),
      "wrong-product",
      "$.setUp[3].effects[0].product",
    ],
    [
      "contact time of a product that is not there",
      (p) => set(steps(p)[3], "effects", [{ verb: "apply", item: "lamp", product: "none" }]),
      "unknown-product",
      "$.setUp[3].effects[0].product",
    ],
    [
      "a hand rub as a surface disinfectant",
      (p) => set(steps(p)[3], "effects", [{ verb: "apply", item: "lamp", product: "handRubA" }]),
      "wrong-product",
      "$.setUp[3].effects[0].product",
    ],
    [
      "a product without a contact time",
      (p) => set(p.products?.[0]?.label, "contactSec", null),
      "wrong-shape",
      "$.products[0].label.contactSec",
    ],
    [
      "a day that the calendar has not",
      (p) => set(p.products?.[0]?.label, "expiry", "2026-02-31"),
      "wrong-shape",
      "$.products[0].label.expiry",
    ],
    ["a missing list", (p) => set(p, "breakdown", undefined), "wrong-shape", "$.breakdown"],
    [
      "an item asked about that is not there",
      (p) => set(p.events?.[0], "asksItem", ["ghost"]),
      "unknown-item",
      "$.events[0].asksItem[0]",
    ],
  ];
  it.each(cases)("is refused for %s, with the place", (_what, spoil, code, at) => {
    const read = spoilt(spoil);
    expect(read).toMatchObject({ ok: false, trouble: { code, at } });
    isClear(read);
  });

  it("is refused with the place, whatever field holds something of another kind", () => {
    const strange = [null, 7, "x", true, [], {}, [[]], { a: 1 }];
    const visit = (node: unknown, path: string, put: (value: unknown) => void): void => {
      for (const value of strange) {
        if (typeof value === typeof node && Array.isArray(value) === Array.isArray(node) && node !== null) continue;
        put(value);
        const read = readProtocol(JSON.stringify(root));
        // Texts, the expiry and optional words are free within their kind; nothing else takes what it is not.
        if (!read.ok) expect(read.trouble.at.startsWith(path)).toBe(true);
        isClear(read);
      }
      put(node);
      if (typeof node !== "object" || node === null) return;
      const at = node as Record<string, unknown>;
      const keys = Array.isArray(node) ? ["0"].filter((k) => k in at) : Object.keys(at);
      for (const key of keys)
        visit(at[key], Array.isArray(node) ? `${path}[${key}]` : `${path}.${key}`, (v) => set(at, key, v));
    };
    let root: unknown = JSON.parse(whole);
    visit(root, "$", (value) => {
      root = value;
    });
    expect(readProtocol(JSON.stringify(root))).toEqual({ ok: true, protocol: conventionBooth });
  });

  it("is refused before it is read if it is larger than any protocol", () => {
    for (const junk of ["x".repeat(10_000_000), `[${"1,".repeat(5_000_000)}1]`, `{"a":"${"y".repeat(10_000_000)}"}`]) {
      expect(readProtocol(junk)).toMatchObject({ ok: false, trouble: { code: "too-large", at: "$" } });
    }
  });

  it("is refused where an id is a name that every object has", () => {
    const names = Object.getOwnPropertyNames(Object.prototype).filter((name) => /^[a-z]/.test(name));
    expect(names).toContain("constructor");
    const [item] = conventionBooth.items;
    for (const name of names) {
      const read = readProtocol(whole.replaceAll(JSON.stringify(item?.id), JSON.stringify(name)));
      expect(read, name).toMatchObject({ ok: false, trouble: { at: "$.items[0].id" } });
    }
  });

  it("is refused however deep it is nested", () => {
    const deep = (open: string, close: string, n: number) => `${open.repeat(n)}1${close.repeat(n)}`;
    for (const n of [100, 10_000, 300_000]) {
      for (const text of [deep("[", "]", n), deep('{"a":', "}", n), `{"format":${deep("[", "]", n)}}`]) {
        const read = readProtocol(text);
        expect(read.ok).toBe(false);
        isClear(read);
      }
    }
  });

  property.prop([fc.oneof(fc.string({ unit: "binary" }), fc.json(), fc.json({ maxDepth: 12 }))], {
    numRuns: runs(500),
  })("never throws and never passes: any text, any JSON", (text) => {
    const read = readProtocol(text);
    expect(read.ok).toBe(false);
    isClear(read);
  });

  const ids = ["a", "b", "c", "d", "e", "f"];
  const shaped = anyOf(z.toJSONSchema(Protocol, { io: "input" }) as never, ids, 4);
  property.prop([shaped], { numRuns: runs(200) })(
    "made from the schema is a protocol, or has a wrong name in it",
    (json) => {
      const read = asProtocol(json);
      isClear(read);
      if (!read.ok) expect(read.trouble.code).toMatch(/^(duplicate-id|unknown-item|unknown-product|wrong-product)$/);
    },
  );

  property.prop([shaped], { numRuns: runs(200) })(
    "made from the schema, once its names are right, is a protocol and is judged, and every story happens",
    (json) => {
      const read = asProtocol(named(json as z.input<typeof Protocol>, ids));
      if (!read.ok) return expect.fail(JSON.stringify(read.trouble));
      const found = checkProtocol(read.protocol, { firstOnly: true });
      for (const { moves, rule } of found.verdict === "breach" ? found.breaches : []) {
        expect(tell(read.protocol, moves).broken).toContain(rule);
      }
    },
  );

  const small = longProtocol(20, 2);
  /** Somewhere in a protocol something else stands: gone, of another kind, or taken from elsewhere in it. */
  const places: PathAndValue[] = [];
  const collect = (node: unknown, path: readonly string[]): void => {
    places.push({ path, value: node });
    if (typeof node !== "object" || node === null) return;
    for (const [key, value] of Object.entries(node)) collect(value, [...path, key]);
  };
  collect(small, []);
  const anyPlace = fc.nat({ max: places.length - 1 }).map((i) => places[i] as PathAndValue);
  property.prop(
    [
      fc.array(fc.tuple(anyPlace, fc.oneof(anyPlace, fc.jsonValue(), fc.constant(undefined))), {
        minLength: 1,
        maxLength: 2,
      }),
    ],
    {
      numRuns: runs(250),
    },
  )("that was one once is refused clearly, or is still one and is judged", (changes) => {
    const copy = JSON.parse(JSON.stringify(small)) as unknown;
    for (const [{ path }, by] of changes) {
      const parent = path
        .slice(0, -1)
        .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], copy);
      const key = path.at(-1);
      const value = typeof by === "object" && by !== null && "path" in by ? (by as PathAndValue).value : by;
      if (key !== undefined && typeof parent === "object" && parent !== null) set(parent, key, value);
    }
    const read = readProtocol(JSON.stringify(copy));
    isClear(read);
    if (!read.ok) return;
    expect(asProtocol(JSON.parse(JSON.stringify(read.protocol)))).toEqual(read);
    expect(checkProtocol(read.protocol, { firstOnly: true }).verdict).toMatch(/proved|breach|notProved/);
  });
});

/** The same with each name once, and only things and products that are there. */
function named(json: z.input<typeof Protocol>, ids: readonly string[]): z.input<typeof Protocol> {
  let count = 0;
  const items = ids.map((id, i) => ({ ...(json.items[i % json.items.length] as (typeof json.items)[number]), id }));
  const step = (one: (typeof json.setUp)[number]) => {
    count += 1;
    const isSkin = (id: string) => items.some((i) => i.id === id && i.role === "skin");
    const product = (id: string) => (isSkin(id) ? "antiseptic" : "spray");
    const effects = (one.effects ?? []).map((e) => (e.verb === "apply" ? { ...e, product: product(e.item) } : e));
    return { ...one, id: `s${count}`, effects };
  };
  const label = longProtocol(20, 2).products[0]?.label as z.input<typeof Protocol>["products"][number]["label"];
  const events = [...new Map(json.events.map((f) => [f.event, f])).values()];
  return {
    ...json,
    items,
    products: [
      { id: "spray", use: "surfaceDisinfectant", label: json.products[0]?.label ?? label },
      { id: "antiseptic", use: "skinAntiseptic", label },
    ],
    setUp: json.setUp.map(step),
    dressing: json.dressing.map(step),
    breakdown: json.breakdown.map(step),
    resuming: json.resuming.map(step),
    events: events.map((f) => ({ ...f, steps: f.steps.map(step) })),
  };
}

interface PathAndValue {
  readonly path: readonly string[];
  readonly value: unknown;
}

describe("the same in Spanish", () => {
  const inSpanish = (json: unknown): string => {
    const read = asProtocol(json);
    return read.ok ? "a protocol" : read.trouble.says(troubleWords("es"));
  };

  it("says what is missing, what stands there instead, and how to mend it", () => {
    const { version, ...without } = conventionBooth;
    expect(version).not.toBe("");
    expect(inSpanish(without)).toBe("Falta este campo. Es un texto entre comillas. Añádelo.");
    expect(inSpanish({ ...conventionBooth, setUp: null })).toBe(
      "Aquí está nada (null), donde va una lista entre corchetes. Corrígelo.",
    );
    expect(inSpanish({ ...conventionBooth, after: 1 })).toBe(
      'Un protocolo no tiene aquí el campo "after". Quítalo. Los pasos se hacen en el orden de su lista.',
    );
    expect(inSpanish({ ...conventionBooth, items: [...conventionBooth.items, ...conventionBooth.items] })).toMatch(
      /^Dos cosas se llaman "/,
    );
  });
});
