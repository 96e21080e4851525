import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { main } from "../../src/cli/main";
import { RecordFile } from "../../src/export";
import { tempFolder } from "../support/tempFolder";

const folder = tempFolder("short");
const repeatable = ["--seed", "short", "--at", "2026-11-25T10:00:00+00:00", "--zone", "UTC"];
const printed: string[] = [];

async function run(...argv: string[]): Promise<number> {
  printed.length = 0;
  const keep = (line: string) => void printed.push(line);
  return main(argv, { print: keep, error: keep });
}

/** Four seconds of a synthetic voice; the golden utterance of the phrase model. */
const rehearse = (name: string, ...more: string[]) =>
  run(
    "rehearse",
    "audio/make/golden/utterance.wav",
    "--protocol",
    "conventionBooth",
    "--out",
    join(folder, name),
    ...more,
  );
const bytesOf = (name: string, file: string) => readFileSync(join(folder, name, file));

describe("a short recording", () => {
  beforeAll(async () => {
    expect(await rehearse("first", ...repeatable)).toBe(0);
  });

  test("becomes a sealed record that verifies, and says that the session was not closed", async () => {
    expect(printed.join("\n")).toContain("the session was not closed");
    expect(await run("verify", join(folder, "first", "record.json"))).toBe(0);
    const record = RecordFile.parse(JSON.parse(bytesOf("first", "record.json").toString()));
    expect(record.closing?.summary.outcome).toBe("unfinished");
    expect(record.entries[0]?.at).toBe("2026-11-25T10:00:00.000+00:00");
    expect(record.header.phraseModel).toMatch(/^[0-9a-f]{64}$/);
  });

  test("tells in its transcript when what was said and kept", () => {
    const lines = bytesOf("first", "transcript.txt").toString().trimEnd().split("\n");
    expect(lines[0]).toMatch(/^00:00\.000 {2}says {4}Session begun/);
    expect(lines.every((line) => /^\d\d:\d\d\.\d{3} {2}\S/.test(line))).toBe(true);
    expect(lines.some((line) => line.includes("kept    StepEntered list=setUp"))).toBe(true);
  });

  test("comes out the same, byte for byte, with the same seed and start", async () => {
    await rehearse("second", ...repeatable);
    for (const file of ["record.json", "transcript.txt"])
      expect(bytesOf("second", file).equals(bytesOf("first", file))).toBe(true);
  });

  test("has a key and ids of its own without a seed", async () => {
    await rehearse("third");
    const [one, other] = ["first", "third"].map((name) => JSON.parse(bytesOf(name, "record.json").toString()).header);
    expect(other.device).not.toBe(one.device);
    expect(other.session).not.toBe(one.session);
  });

  test("leaves the two files and nothing half written", () => {
    expect(readdirSync(join(folder, "first")).sort()).toEqual(["record.json", "transcript.txt"]);
  });

  test("fails to verify with any one byte changed, exit code 1", async () => {
    const whole = bytesOf("first", "record.json");
    const altered = join(folder, "altered.json");
    const places = Array.from({ length: 60 }, (_, n) => Math.floor((n * whole.length) / 60));
    for (const at of [...places, whole.length - 1]) {
      const bytes = Uint8Array.from(whole);
      bytes[at] = (whole[at] ?? 0) ^ (at % 2 === 0 ? 1 : 0x20);
      writeFileSync(altered, bytes);
      expect({ at, exitCode: await run("verify", altered) }).toEqual({ at, exitCode: 1 });
    }
  });
});
