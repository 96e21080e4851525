/** `gloveside mix` at the command line: help, JSON, one clear line of trouble, and nothing that throws. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { mix } from "./cli";

async function run(argv: readonly string[]) {
  const printed: string[] = [];
  const errors: string[] = [];
  const code = await mix(argv, { print: (line) => printed.push(line), error: (line) => errors.push(line) }, () => 0);
  return { code, printed, errors };
}

describe("gloveside mix", () => {
  it("answers with both ways, the label and the cautions", async () => {
    const { code, printed } = await run(["--stock", "5%", "--target", "0.5%", "--volume", "1 L", "--zone", "UTC"]);
    expect(code).toBe(0);
    expect(printed.join("\n")).toContain("111.1111 mL stock");
    expect(printed.join("\n")).toContain("made up to 1000 mL: 100 mL stock, 900 mL water");
    expect(printed.join("\n")).toContain("Never mix");
  });

  it("keeps exact fractions in JSON", async () => {
    const { printed } = await run(["--stock", "5%", "--target", "0.5%", "--volume", "1 L", "--zone", "UTC", "--json"]);
    const found = JSON.parse(printed.join("\n"));
    expect(found.mix.addedTo.stockMl).toBe("1000/9");
    expect(found.useBy.useBy).toBe("1970-01-02T00:00:00.000Z");
    expect(found.cautions[0].code).toBe("never-mix");
  });

  it("prints help", async () => {
    const { code, printed } = await run(["--help"]);
    expect(code).toBe(0);
    expect(printed[0]).toMatch(/^Usage: gloveside mix/);
  });

  it.each([
    [["--stock", "5%"]],
    [["--stock", "5%", "--target", "6%", "--volume", "1 L"]],
    [["--stock", "5%", "--target", "1%", "--volume", "1 L", "--with", "vinegar"]],
    [["--stock", "5%", "--target", "1%", "--volume", "1 L", "--zone", "Mars/Olympus"]],
    [["--stock", "5%", "--target", "1%", "--volume", "1 L", "--kind", "gas"]],
    [["--nonsense"]],
    [["stray"]],
  ])("gives one line and exit code 2 for %j", async (argv) => {
    const { code, printed, errors } = await run(argv);
    expect(code).toBe(2);
    expect(printed).toEqual([]);
    expect(errors).toHaveLength(1);
  });

  const word = fc.oneof(
    fc.constantFrom(
      "--stock",
      "--target",
      "--volume",
      "--kind",
      "--with",
      "--made-at",
      "--label-hours",
      "--zone",
      "--name",
      "--by",
      "--json",
      "--help",
      "--",
      "-",
    ),
    fc.constantFrom("5%", "0.5%", "1 L", "powder", "tablet", "alcohol", "96%", "2026-11-25T07:40", "24", "UTC"),
    fc.string({ unit: "binary" }),
  );
  property.prop([fc.array(word, { maxLength: 12 })])(
    "never throws; trouble is exactly one printable line",
    async (argv) => {
      const { code, errors } = await run(argv);
      expect([0, 2]).toContain(code);
      expect(errors).toHaveLength(code === 2 ? 1 : 0);
      expect(errors.join("")).not.toMatch(/[\p{Cc}\u2028\u2029]/u);
    },
  );
});
