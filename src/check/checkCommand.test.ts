import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { longProtocol } from "../../tests/bench/longProtocol";
import { tempFolder } from "../../tests/support/tempFolder";
import type { Protocol } from "../session/protocol";
import { check } from "./checkCommand";

const folder = tempFolder("check");
const whole = longProtocol(20, 2);

async function asked(json: unknown, ...options: string[]) {
  const file = join(folder, "protocol.json");
  writeFileSync(file, typeof json === "string" ? json : JSON.stringify(json));
  const [lines, errors]: [string[], string[]] = [[], []];
  const out = { print: (l: string) => void lines.push(l), error: (l: string) => void errors.push(l) };
  const code = await check([file, ...options], out);
  return { code, lines, errors };
}

const without = (p: Protocol, id: string): Protocol => ({ ...p, setUp: p.setUp.filter((s) => s.id !== id) });

describe("gloveside check", () => {
  it("says proved, with counts, and leaves with 0", async () => {
    const { code, lines, errors } = await asked(whole);
    expect(lines).toEqual([expect.stringMatching(/^proved: \d+ states, \d+ transitions, 0 breaches \(\d+ ms\)$/)]);
    expect([code, errors]).toEqual([0, []]);
  });

  it("tells the story of a breach, its rule and its source, and leaves with 1", async () => {
    const { code, lines } = await asked(without(whole, "firstHands"));
    expect(code).toBe(1);
    expect(lines.slice(0, 3)).toEqual([
      "Breach 1:",
      '  Now it asks: "Do firstGloves." (firstGloves).',
      "  Rule: Hands are washed or rubbed before gloves go on. Source: WHO 2009 hand hygiene; CDC glove use.",
    ]);
    expect(lines.at(-1)).toMatch(/^not safe: \d+ breach/);
  });

  it("tells it in Spanish where that is asked for, and knows no third language", async () => {
    const { code, lines } = await asked(without(whole, "firstHands"), "--language", "es");
    expect(code).toBe(1);
    expect(lines[1]).toBe("  Ahora pide: «Do firstGloves.» (firstGloves).");
    expect(await asked(whole, "--language", "xx")).toMatchObject({ code: 2, lines: [] });
  });

  it("gives the events of the story as JSON", async () => {
    const { code, lines } = await asked(without(whole, "firstHands"), "--json");
    const found = JSON.parse(lines.join("\n"));
    expect(code).toBe(1);
    expect(found).toMatchObject({ verdict: "breach", breaches: [{ rule: "handsBeforeGloves" }] });
    expect(found.breaches[0].events[0]).toEqual({ type: "session.begin", today: "2026-01-01" });
  });

  it("refuses what is no protocol in one line with the place in the file, and leaves with 2", async () => {
    const stranger = { ...whole, setUp: [{ ...whole.setUp[0], effects: [{ verb: "touch", item: "ghost" }] }] };
    const cases: [unknown, RegExp][] = [
      ["{", /at \$: The file is not JSON/],
      [{ ...whole, setUp: 3 }, /at \$\.setUp: /],
      [stranger, /at \$\.setUp\[0\]\.effects\[0\]\.item: No item is called "ghost"/],
      ["[".repeat(1_000_000), /at \$: /],
      ["x".repeat(10_000_000), /at \$: The file is larger/],
    ];
    for (const [json, words] of cases) {
      const { code, lines, errors } = await asked(json);
      expect([code, lines, errors.length]).toEqual([2, [], 1]);
      expect(errors[0]).toMatch(words);
      expect(errors[0]).not.toContain("\n");
    }
  });

  property.prop([fc.oneof(fc.json(), fc.string({ unit: "binary" }))], { numRuns: 40 })(
    "leaves with 2, one line and nothing written, whatever else the file holds",
    async (text) => {
      const { code, lines, errors } = await asked(text);
      expect([code, lines, errors.length]).toEqual([2, [], 1]);
      expect(errors[0]).toMatch(/: at \$/);
      expect(errors[0]).not.toMatch(/[\n\r]/);
      expect(readdirSync(folder)).toEqual(["protocol.json"]);
    },
  );

  it("refuses a file that is not there, and a word too many", async () => {
    const errors: string[] = [];
    const out = { print: () => undefined, error: (l: string) => void errors.push(l) };
    expect(await check([join(folder, "none.json")], out)).toBe(2);
    expect(await check([], out)).toBe(2);
    expect(await check(["a", "b"], out)).toBe(2);
    expect(errors).toHaveLength(3);
  });
});
