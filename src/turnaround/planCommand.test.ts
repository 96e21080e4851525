import { writeFileSync } from "node:fs";
import { join } from "node:path";
import Ajv from "ajv/dist/2020";
import { describe, expect, it } from "vitest";
import { tempFolder } from "../../tests/support/tempFolder";
import { bundledProtocols } from "../session/protocols";
import { plan } from "./planCommand";
import { rawProblemJsonSchema } from "./rawProblem";

const folder = tempFolder("plan");

function run(content: unknown, ...words: readonly string[]) {
  const file = join(folder, "station.json");
  writeFileSync(file, typeof content === "string" ? content : JSON.stringify(content));
  return say(file, ...words);
}
function say(...words: readonly string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const code = plan(words, { write: (text) => said.push(text), error: (text) => complained.push(text) });
  return { code, said: said.join(""), complained: complained.join("") };
}

const station = {
  format: "gloveside.turnaround.v1",
  gloveChangeSec: 60,
  gloves: "soiled",
  tasks: [
    { id: "spray", label: "Spray the chair", handsOnSec: 20, cleanliness: "soiled" },
    {
      id: "wipe",
      label: "Wipe the chair",
      handsOnSec: 30,
      cleanliness: "clean",
      after: [{ task: "spray", minWaitSec: 300 }],
    },
    { id: "pack", label: "Pack the cups", handsOnSec: 45, cleanliness: "clean" },
  ],
};

describe("gloveside plan", () => {
  it("prints what to do when, a line of time, and whether it is proved", () => {
    const { code, said } = run(station);
    expect(code).toBe(0);
    expect(said).toBe(`  start    end  hands  what
   0:00   0:20   20 s  Spray the chair
   0:20   1:20   60 s  change gloves, hand hygiene between
   1:20   2:05   45 s  Pack the cups
   2:05   5:20         (hands free)
   5:20   5:50   30 s  Wipe the chair
   5:50                station ready

  hands  |###gggggggggg#########................................######| 0:00 to 5:50
  waits  |...~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~.....| Spray the chair, 5:00

Ready at 5:50 (proved: no order is ready sooner), with 1 glove change and 0 re-applications.
`);
  });

  it("prints the plan as JSON", () => {
    const { code, said } = run(station, "--json");
    expect(code).toBe(0);
    expect(JSON.parse(said)).toMatchObject({
      kind: "planned",
      order: ["spray", "pack", "wipe"],
      readySec: 350,
      proved: true,
    });
  });

  it("says in plain words why no order is possible", () => {
    const [spray, wipe, pack] = station.tasks;
    const circle = { ...station, tasks: [{ ...spray, after: [{ task: "wipe" }] }, wipe, pack] };
    expect(run(circle)).toEqual({
      code: 1,
      said: "",
      complained:
        'Not possible: The order goes round in a circle: "Spray the chair" waits for "Wipe the chair" waits for "Spray the chair".\n',
    });
  });

  it.each([
    ["not JSON", "{", "is not JSON"],
    ["another format", { ...station, format: "v0" }, "format: "],
    ["an unknown word", { ...station, colour: "red" }, "colour"],
    ["half a second", { ...station, gloveChangeSec: 0.5 }, "gloveChangeSec: "],
    ["a stranger", { ...station, tasks: [{ id: "a", handsOnSec: 1, after: [{ task: "x" }] }] }, '"x" is named'],
    ["no tasks", { ...station, tasks: [] }, "tasks: "],
    ["null", "null", "the file: "],
  ])("answers a file with %s in one line and exit code 2", (_, content, reason) => {
    const { code, said, complained } = run(content);
    expect({ code, said, lines: complained.trimEnd().split("\n").length }).toEqual({ code: 2, said: "", lines: 1 });
    expect(complained).toContain(reason);
  });

  it("answers wrong words in one line and exit code 2", () => {
    expect(say()).toMatchObject({ code: 2, complained: "gloveside plan: needs a file. See gloveside plan --help.\n" });
    expect(say("a.json", "b.json")).toMatchObject({ code: 2 });
    expect(say("--loud")).toMatchObject({ code: 2, complained: expect.stringContaining("does not know --loud") });
    expect(say(join(folder, "nowhere.json"))).toMatchObject({
      code: 2,
      complained: expect.stringContaining("cannot be read"),
    });
  });

  it("publishes a schema that an independent checker accepts the file by", () => {
    const check = new Ajv().compile(rawProblemJsonSchema() as object);
    expect(check(station)).toBe(true);
    expect(check({ ...station, colour: "red" })).toBe(false);
    expect(JSON.parse(say("--schema").said)).toEqual(rawProblemJsonSchema());
  });

  it("explains itself", () => {
    expect(say("--help")).toMatchObject({ code: 0, said: expect.stringContaining("Exit codes") });
  });
});

describe("gloveside plan with a protocol", () => {
  const [cartridge] = bundledProtocols;

  it("plans its breakdown by the labels in the file, and says what that saves", () => {
    const { code, said } = run(cartridge);
    expect(code).toBe(0);
    expect(said).toContain("All sharps into container");
    expect(said).toMatch(/proved: no order is ready sooner/);
    expect(said).toMatch(/waiting beside each surface +\d+:\d\d {3}saved \d+:\d\d/);
    expect(said).toContain("the product label decides");
  });

  it("gives the order of every step, the ready time and the next set-up as JSON", () => {
    const { code, said } = run(cartridge, "--json", "--next");
    const told = JSON.parse(said) as { order: string[]; readySec: number; nextSetUpSec: number; besideSec: number };
    expect(code).toBe(0);
    expect(told.order.toSorted()).toEqual(cartridge?.breakdown.map((s) => s.id).toSorted());
    expect(told.nextSetUpSec).toBeGreaterThan(told.readySec);
    expect(told.besideSec).toBeGreaterThan(told.readySec);
  });

  it("refuses a label that dries sooner than it can be put on again, in plain words", () => {
    const products = cartridge?.products.map((p) => ({ ...p, label: { ...p.label, reapplyWithinSec: 10 } }));
    const { code, complained } = run({ ...cartridge, products });
    expect(code).toBe(1);
    expect(complained).toMatch(/has to be wetted again within 10 s, but wetting it takes \d+ s/);
  });

  it("refuses what is no protocol in one line with the place in the file", () => {
    const { code, complained } = run({ ...cartridge, breakdown: [] });
    expect(code).toBe(2);
    expect(complained).toMatch(/\$\.breakdown/);
  });
});
