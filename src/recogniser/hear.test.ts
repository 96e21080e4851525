import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { tempFolder } from "../../tests/support/tempFolder";
import { commandIds } from "../intent/phrases";
import { hear, hearHelp } from "./hear";
import { loadModel } from "./network/loadModel";
import { shippedModel } from "./network/shippedModel";
import { writeWav } from "./sound/writeWav";

const golden = new URL("../../audio/make/golden/utterance.wav", import.meta.url).pathname;
const folder = tempFolder("hear");
const silent = join(folder, "silent.wav");
await writeFile(silent, writeWav(new Float32Array(16_000), 16_000));
const broken = join(folder, "broken.wav");
await writeFile(broken, "not sound");

async function run(...argv: readonly string[]) {
  const [out, err]: [string[], string[]] = [[], []];
  const status = await hear(argv, { write: (text) => out.push(text) }, { write: (text) => err.push(text) });
  return { status, out: out.join(""), err: err.join("") };
}

describe("gloveside hear", () => {
  test("explains itself", async () => {
    expect(await run("--help")).toEqual({ status: 0, out: hearHelp, err: "" });
  });

  test("hears nothing in silence and says so by saying nothing", async () => {
    expect(await run(silent)).toEqual({ status: 0, out: "", err: "" });
  });

  test.each([
    ["no recording", [], "no recording was named"],
    ["an unknown option", ["--louder", silent], "louder"],
    ["an unknown command", ["--allowed", "done,dance", silent], '"dance" is not a command'],
    ["an unknown address", ["--address", "kitchen", silent], '"kitchen" is not an address word'],
    ["a file that is not there", [join(folder, "none.wav")], "none.wav: cannot be read"],
    ["a file that is not sound", [broken], "broken.wav: this is not a WAV file"],
    ["a model that is not there", ["--model", folder, silent], "the phrase model cannot be read"],
  ] as const)("refuses %s, with status 2 and a sentence", async (_, argv, sentence) => {
    const { status, out, err } = await run(...argv);
    expect(status).toBe(2);
    expect(out).toBe("");
    expect(err).toContain(sentence);
  });

  test("goes on to the next file after a bad one", async () => {
    expect((await run(broken, silent)).status).toBe(2);
  });

  test("refuses a model that does not match its digest", async () => {
    const lines: string[] = [];
    const spoilt = async () => loadModel("{}", new Uint8Array());
    expect(await hear([silent], { write: (text) => lines.push(text) }, undefined, spoilt)).toBe(2);
  });

  test("prints one object a line, in time order, with only known words", async () => {
    const { status, out } = await run(golden, silent);
    const lines = out
      .split("\n")
      .filter(Boolean)
      .map((line) => JSON.parse(line));
    const times = lines.map((line) => line.atMs);
    expect(status).toBe(0);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(
      lines.every(
        (line) => line.file === golden && [...(line.candidates ?? [line.command])].every((c) => commandIds.includes(c)),
      ),
    ).toBe(true);
    expect((await shippedModel()).ok).toBe(true);
  });
});
