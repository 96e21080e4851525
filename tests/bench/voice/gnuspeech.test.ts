import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";

const gnuspeech = resolve("out/gnuspeech/node_modules/@echogarden/gnuspeech-wasm");

test.skipIf(!existsSync(gnuspeech))("GnuSpeech says a text alike every time, first or later in a list", () => {
  const folder = mkdtempSync(join(tmpdir(), "gnuspeech-"));
  const says = (name: string, text: string) => ({ path: join(folder, name), text, voice: "female", tempo: 1.29 });
  const render = (...jobs: readonly object[]) => {
    writeFileSync(join(folder, "jobs.json"), JSON.stringify(jobs));
    execFileSync("node", ["audio/make/gnuspeech.mjs", join(folder, "jobs.json")], {
      env: { ...process.env, GNUSPEECH: gnuspeech },
    });
  };
  render(says("one", "station fell on the floor"));
  render(says("other", "the bus was late"), says("two", "station fell on the floor"));
  const same = readFileSync(join(folder, "one")).equals(readFileSync(join(folder, "two")));
  rmSync(folder, { recursive: true });
  expect(same).toBe(true);
});
