/** `gloveside steriliser` at the command line, on real files. */
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fc, test as property } from "@fast-check/vitest";
import { beforeAll, describe, expect, it } from "vitest";
import { tempFolder } from "../../tests/support/tempFolder";
import { steriliser } from "./cli";

const nowMs = Date.parse("2026-11-25T12:00:00Z");
const folder = tempFolder("cycles");
const file = (name: string) => join(folder, name);

beforeAll(async () => {
  const rows = (celsius: readonly number[]) => celsius.map((c, i) => `${i},${c}`).join("\n");
  await writeFile(file("held.csv"), `time_min,temperature_c\n${rows([120, 134, 135, 136, 135, 100])}\n`);
  await writeFile(file("dipped.csv"), `time_min,temperature_c\n${rows([134, 134, 134, 128, 134, 134, 134])}\n`);
  await writeFile(
    file("air.csv"),
    "time_min,temperature_c,pressure_bar_gauge\n0,134,2.5\n1,134,2.5\n2,134,2.5\n3,134,2.5\n",
  );
  await writeFile(file("junk.csv"), "\u0000\u0001,,,\n\n");
});

async function run(argv: readonly string[]) {
  const printed: string[] = [];
  const errors: string[] = [];
  const code = await steriliser(
    argv,
    { print: (line) => printed.push(line), error: (line) => errors.push(line) },
    () => nowMs,
  );
  return { code, printed, errors };
}

describe("gloveside steriliser", () => {
  it("accepts a held cycle with exit code 0", async () => {
    const { code, printed } = await run(["check", file("held.csv")]);
    expect(code).toBe(0);
    expect(printed[0]).toMatch(/^Held 134-137 °C for 3 min: 3\.0 min unbroken\. F0 /);
  });

  it("fails a dipped cycle with a large F0, exit code 1", async () => {
    const { code, printed } = await run(["check", file("dipped.csv"), "--json"]);
    const found = JSON.parse(printed.join("\n"));
    expect(code).toBe(1);
    expect(found).toMatchObject({
      accepted: false,
      code: "not-held",
      heldMs: 120_000,
      lethality: { method: "exactRamp", referenceC: 121.1, zK: 10 },
    });
    expect(found.lethality.minutes.toFixed(3)).toBe("99.130");
  });

  it("computes F0 as asked and says how", async () => {
    const { printed } = await run(["check", file("dipped.csv"), "--method", "trapezoid", "--json"]);
    expect(JSON.parse(printed.join("\n")).lethality.minutes.toFixed(3)).toBe("102.390");
  });

  it("does not accept air, nor a wrapped pack in a class N cycle", async () => {
    expect(await run(["check", file("air.csv")])).toMatchObject({
      code: 1,
      printed: expect.arrayContaining([expect.stringContaining("air in the chamber")]),
    });
    expect(await run(["check", file("held.csv"), "--class", "N", "--load", "wrapped-solid"])).toMatchObject({
      code: 1,
    });
    expect(await run(["check", file("held.csv"), "--class", "B", "--load", "wrapped-solid"])).toMatchObject({
      code: 0,
    });
  });

  it("judges what was read by hand, says when a test is due, and knows steam", async () => {
    expect((await run(["hand", "--coolest", "134", "--hottest", "136", "--minutes", "3.5"])).code).toBe(0);
    expect((await run(["due", "--last", "2026-11-17", "--zone", "UTC"])).printed).toEqual([
      "biological test overdue 2026-11-24 (weekly)",
    ]);
    expect((await run(["steam", "--celsius", "134"])).printed[0]).toContain("304.20 kPa");
  });

  it("prints help", async () => {
    expect((await run(["-h"])).printed[0]).toMatch(/^Usage: gloveside steriliser/);
  });

  it.each([
    [[]],
    [["check"]],
    [["check", "/no/such/file.csv"]],
    [["check", "/"]],
    [["check", "a.csv", "b.csv"]],
    [["check", "held.csv", "--band", "en-999"]],
    [["hand", "--coolest", "136", "--hottest", "134", "--minutes", "3"]],
    [["hand", "--coolest", "hot", "--hottest", "134", "--minutes", "3"]],
    [["due", "--last", "yesterday"]],
    [["steam"]],
    [["steam", "--celsius", "900"]],
  ])("gives one line and exit code 2 for %j", async (argv) => {
    const { code, printed, errors } = await run(argv);
    expect([code, printed.length, errors.length]).toEqual([2, 0, 1]);
  });

  it("refuses a file of junk in one line", async () => {
    expect(await run(["check", file("junk.csv")])).toMatchObject({ code: 2, printed: [] });
  });

  const word = fc.oneof(
    fc.constantFrom(
      "check",
      "hand",
      "due",
      "steam",
      "--coolest",
      "--hottest",
      "--minutes",
      "--kpa-abs",
      "--celsius",
      "--last",
      "--rule",
      "--band",
      "--class",
      "--load",
      "--gap",
      "--tref",
      "--json",
    ),
    fc.constantFrom("134", "3", "300", "2026-11-25", "monthly", "B", "porous", "en-121"),
    fc.string({ unit: "binary" }),
  );
  property.prop([fc.array(word, { maxLength: 10 })])(
    "never throws; trouble is exactly one printable line",
    async (argv) => {
      const { code, errors } = await run(argv);
      expect([0, 1, 2]).toContain(code);
      expect(errors).toHaveLength(code === 2 ? 1 : 0);
      expect(errors.join("")).not.toMatch(/[\p{Cc}\u2028\u2029]/u);
    },
  );
});
