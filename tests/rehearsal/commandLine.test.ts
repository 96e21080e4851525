import { spawnSync } from "node:child_process";
import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { main } from "../../src/cli/main";
import { subcommands } from "../../src/cli/subcommands";
import { tempFolder } from "../support/tempFolder";

const utterance = "audio/make/golden/utterance.wav";

async function run(...argv: string[]) {
  const printed: string[] = [];
  const complained: string[] = [];
  const out = { print: (line: string) => void printed.push(line), error: (line: string) => void complained.push(line) };
  const exitCode = await main(argv, out);
  return { exitCode, printed: printed.join("\n"), complained };
}

describe("the command line", () => {
  test("lists its subcommands on --help", async () => {
    const { exitCode, printed } = await run("--help");
    expect(exitCode).toBe(0);
    for (const name of Object.keys(subcommands)) expect(printed).toContain(`  ${name}`);
  });

  test.each(Object.keys(subcommands))("%s explains itself on --help", async (name) => {
    const { exitCode, printed, complained } = await run(name, "--help");
    expect(exitCode).toBe(0);
    expect(printed).toContain(`gloveside ${name}`);
    expect(printed).toMatch(/exit (codes?|status)/i);
    expect(complained).toEqual([]);
  });

  const folder = tempFolder("cli");
  const notWav = join(folder, "not.wav");
  writeFileSync(notWav, "RIFF but not really");
  const notProtocol = join(folder, "protocol.json");
  writeFileSync(notProtocol, '{"format":"gloveside-protocol"}');
  const out = join(folder, "never");
  const rehearse = ["rehearse", utterance, "--protocol", "conventionBooth", "--out", out];

  test.each([
    [[]],
    [["dance"]],
    [["__proto__"]],
    ...Object.keys(subcommands).map((name) => [[name, "--no-such-option"]]),
    [["rehearse"]],
    [["rehearse", utterance, "--protocol", "conventionBooth"]],
    [["rehearse", utterance, "--out", out]],
    [["rehearse", utterance, "--protocol", "noSuchProtocol", "--out", out]],
    [["rehearse", utterance, "--protocol", notProtocol, "--out", out]],
    [["rehearse", utterance, "--protocol", join(folder, "missing.json"), "--out", out]],
    [["rehearse", notWav, "--protocol", "conventionBooth", "--out", out]],
    [["rehearse", join(folder, "missing.wav"), "--protocol", "conventionBooth", "--out", out]],
    [["rehearse", utterance, "again.wav", "--protocol", "conventionBooth", "--out", out]],
    [["rehearse", utterance, "--protocol", "conventionBooth", "--out", notWav]],
    [["rehearse", utterance, "--protocol", "conventionBooth", "--out", "/proc/nowhere/at/all"]],
    [[...rehearse, "--at", "2026-11-25 10:00"]],
    [[...rehearse, "--zone", "Atlantis/Centre"]],
    [[...rehearse, "--address", "hey"]],
    [[...rehearse, "--model", folder]],
    [["hear"]],
    [["hear", notWav]],
    [["verify"]],
    [["verify", join(folder, "missing.json")]],
  ])("answers %j with one line and exit code 2, and writes nothing", async (argv) => {
    const { exitCode, printed, complained } = await run(...argv);
    expect(exitCode).toBe(2);
    expect(printed).toBe("");
    expect(complained).toHaveLength(1);
    expect(complained[0]).toMatch(/^gloveside( \w+)?: [^\n]+$/);
    expect(complained[0]).not.toMatch(/\bat .*:\d+:\d+/);
    expect(readdirSync(folder).sort()).toEqual(["not.wav", "protocol.json"]);
  });

  test("runs straight from a clone: no build, results on stdout, complaints on stderr", () => {
    const version = spawnSync("node", ["bin/gloveside.mjs", "--version"], { encoding: "utf8" });
    expect(version).toMatchObject({ status: 0, stderr: "" });
    expect(version.stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
    const wrong = spawnSync("node", ["bin/gloveside.mjs", "rehearse"], { encoding: "utf8" });
    expect(wrong).toMatchObject({ status: 2, stdout: "" });
    expect(wrong.stderr.trimEnd().split("\n")).toHaveLength(1);
  });
});
