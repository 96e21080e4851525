/** `gloveside due` at the command line. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { due } from "./cli";

const nowMs = Date.parse("2026-11-25T12:00:00Z");

async function run(argv: readonly string[]) {
  const printed: string[] = [];
  const errors: string[] = [];
  const code = await due(
    argv,
    { print: (line) => printed.push(line), error: (line) => errors.push(line) },
    () => nowMs,
  );
  return { code, printed, errors };
}

describe("gloveside due", () => {
  it("lists first aid, then deadlines with source", async () => {
    const { code, printed } = await run(["exposure", "--at", "2026-11-25T06:40:00Z", "--zone", "Europe/Berlin"]);
    expect(code).toBe(0);
    expect(printed[0]).toMatch(/^! Puncture or cut: wash/);
    expect(printed.join("\n")).toContain("2026-11-28 07:40  first dose of HIV post-exposure medicine, at the latest");
    expect(printed.join("\n")).toMatch(/emergency department .*PASSED/);
  });

  it("gives UTC instants in JSON", async () => {
    const { printed } = await run(["exposure", "--at", "2026-11-25T07:40", "--zone", "Europe/Berlin", "--json"]);
    const found = JSON.parse(printed.join("\n"));
    expect(found.due.find((line: { id: string }) => line.id === "hiv-pep-latest").due).toBe("2026-11-28T06:40:00.000Z");
  });

  it("says no with exit code 1 the day before the eighteenth birthday and yes on it", async () => {
    expect(await run(["age", "--born", "2008-11-26", "--place", "texas", "--zone", "UTC"])).toMatchObject({
      code: 1,
      errors: [],
    });
    expect(await run(["age", "--born", "2008-11-25", "--place", "texas", "--zone", "UTC"])).toMatchObject({ code: 0 });
  });

  it("keeps a steriliser log three years in California", async () => {
    const { printed } = await run([
      "retention",
      "--record",
      "steriliser-log",
      "--from",
      "2024-02-29",
      "--place",
      "california",
    ]);
    expect(printed[0]).toContain("keep until 2027-03-01");
  });

  it("reports within five working days in Texas", async () => {
    const { printed } = await run(["report", "--from", "2026-11-25", "--place", "texas", "--holiday", "2026-11-26"]);
    expect(printed[0]).toMatch(/^2026-12-03: infection/);
  });

  it("prints help", async () => {
    expect((await run(["--help"])).printed[0]).toMatch(/^Usage: gloveside due/);
  });

  it.each([
    [[]],
    [["exposure"]],
    [["exposure", "--at", "2026-11-26T12:00:00Z"]],
    [["exposure", "--at", "2026-11-25T10:00", "--zone", "Nowhere"]],
    [["age", "--born", "2008-02-30"]],
    [["age", "--born", "2008-02-28", "--place", "european-union"]],
    [["age", "--born", "2008-02-28", "--minimum", "-1"]],
    [["retention", "--record", "client-record", "--from", "2026-11-25", "--place", "texas"]],
    [["retention", "--record", "diary", "--from", "2026-11-25"]],
    [["report", "--from", "2026-11-25", "--place", "california"]],
    [["lunch"]],
  ])("gives one line and exit code 2 for %j", async (argv) => {
    const { code, printed, errors } = await run(argv);
    expect([code, printed.length, errors.length]).toEqual([2, 0, 1]);
  });

  const word = fc.oneof(
    fc.constantFrom(
      "exposure",
      "age",
      "retention",
      "report",
      "--at",
      "--born",
      "--on",
      "--from",
      "--record",
      "--place",
      "--minimum",
      "--zone",
      "--holiday",
      "--json",
    ),
    fc.constantFrom(
      "2026-11-25T06:40:00Z",
      "2008-02-29",
      "2026-11-25",
      "client-record",
      "texas",
      "18",
      "UTC",
      "Asia/Kathmandu",
    ),
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
