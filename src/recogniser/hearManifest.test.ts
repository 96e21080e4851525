import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { tempFolder } from "../../tests/support/tempFolder";
import { hear } from "./hear";
import { readWav } from "./sound/wav";
import { writeWav } from "./sound/writeWav";

/** Says "previous step", "accident alarm" and "how many minutes" behind the address word, as tests/journeys/ear.test.ts hears it. */
const recording = new URL("../../tests/journeys/threePhrases.wav", import.meta.url).pathname;
const folder = tempFolder("manifest");
const manifest = join(folder, "list.csv");

async function writeRecordings() {
  const read = readWav(await readFile(recording));
  if (!read.ok) throw new Error(read.message);
  const { samples, rateHz } = read.sound;
  await writeFile(join(folder, "phrases.wav"), writeWav(samples, rateHz, { bits: 24, channels: 2 }));
  await writeFile(join(folder, "quiet.wav"), writeWav(new Float32Array(2 * 44_100), 44_100, { bits: 8 }));
  await writeFile(join(folder, "broken.wav"), "not sound");
}
await writeRecordings();

async function run(rows: string, ...more: readonly string[]) {
  await writeFile(manifest, `file,phrase,condition,allowed\n${rows}\n`);
  const [out, err]: [string[], string[]] = [[], []];
  const argv = [folder, "--manifest", manifest, ...more];
  const status = await hear(argv, { write: (text) => out.push(text) }, { write: (text) => err.push(text) });
  return { status, out: out.join(""), err: err.join("") };
}

describe("gloveside hear --manifest", () => {
  test("counts a phrase heard in stereo at 24 bits, and nothing in silence at 8", async () => {
    const { status, out, err } = await run("phrases.wav,accident,clean,accident\nquiet.wav,,silence,all", "--json");
    expect({ status, err }).toEqual({ status: 0, err: "" });
    const document = JSON.parse(out);
    expect(document.files).toMatchObject([
      { file: "phrases.wav", said: "accident", acted: ["accident"] },
      { file: "quiet.wav", said: null, acted: [], soundMs: 2000 },
    ]);
    expect(document.figures.map(({ what, value }: { what: string; value: number }) => [what, value])).toEqual([
      ["heard right, clean", 100],
      ["another phrase acted on", 0],
      ["false actions, silence", 0],
      ["false actions, all", 0],
    ]);
  });

  test("counts what was acted on beside the phrase as wrong", async () => {
    const { out } = await run("phrases.wav,accident,clean,accident back", "--json");
    expect(JSON.parse(out).files[0].acted).toEqual(["back", "accident"]);
    expect(JSON.parse(out).figures).toMatchObject([
      { value: 0, verdict: "missed" },
      { value: 100, verdict: "missed" },
    ]);
  });

  test("names a bad file, hears the others, and ends with status 2", async () => {
    const { status, out, err } = await run("broken.wav,again,clean,all\nnone.wav,,talk,all\nquiet.wav,,talk,all");
    expect(status).toBe(2);
    expect(err).toContain("broken.wav: this is not a WAV file");
    expect(err).toContain("none.wav: cannot be read");
    expect(out).toContain("| false actions, talk | 0 in 0.00 h |");
  });

  test("prints the table that a person reads, with the bar of a known condition", async () => {
    const { out } = await run("phrases.wav,accident,Buzz 10 dB,accident");
    expect(out).toMatch(/\| heard right, Buzz 10 dB +\| 1 clip +\| 100\.0 % \(2\.5–100\.0\) +\| ≥ 92 % met/);
  });

  test.each([
    ["a manifest that is not there", [folder, "--manifest", join(folder, "none.csv")], "none.csv: cannot be read"],
    ["two folders", [folder, folder, "--manifest", manifest], "one folder is named"],
    ["--json alone", [folder, "--json"], "--json needs --manifest"],
  ] as const)("refuses %s in one sentence", async (_, argv, sentence) => {
    const err: string[] = [];
    expect(await hear(argv, { write: () => {} }, { write: (text) => err.push(text) })).toBe(2);
    expect(err.join("")).toContain(sentence);
  });
});
