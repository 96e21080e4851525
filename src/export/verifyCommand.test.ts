import { mkdtemp, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { newSigner } from "../log";
import { listText } from "../trust/trustedKeys";
import { live } from "./samples/lived";
import { wholeSession } from "./samples/wholeSession";
import { sealRecord } from "./sealRecord";
import { verify } from "./verifyCommand";

const signer = await newSigner();
const { journal, writer } = await live(inputFor(smallProtocol), wholeSession, signer);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const folder = await mkdtemp(join(tmpdir(), "gloveside-verify-"));
const write = async (name: string, text: string) => {
  await writeFile(join(folder, name), text);
  return join(folder, name);
};
const good = await write("good.json", sealed.text);

async function run(...argv: string[]) {
  let said = "";
  const code = await verify(argv, (text) => {
    said += text;
  });
  return { code, said };
}

test("passes a good record and says the three verdicts apart", async () => {
  const { code, said } = await run(good, "--trust", signer.publicKey);
  expect(code).toBe(0);
  expect(said.split("\n").map((line) => line.slice(0, 14))).toEqual([
    "intact     yes",
    expect.stringMatching(/^signed by {2}\S{3}/),
    "follows    yes",
    expect.stringMatching(/^known {6}\d/),
    "personal   the",
    "This proves wh",
    "",
  ]);
  expect(said).toContain("(a trusted key)");
});

test("fails with 1 and names the fact, when one byte was changed", async () => {
  const at = sealed.text.lastIndexOf('+00:00"', sealed.text.indexOf('"n":41,')) - 1;
  const other = sealed.text[at] === "0" ? "1" : "0";
  const bad = await write("bad.json", sealed.text.slice(0, at) + other + sealed.text.slice(at + 1));
  const { code, said } = await run(bad);
  expect(code).toBe(1);
  expect(said).toMatch(/^intact {5}NO: altered-entry at entry 41;/);
});

test("fails with 1 when the key is not among those trusted", async () => {
  const { code, said } = await run(good, "--trust", "ab".repeat(32));
  expect(code).toBe(1);
  expect(said).toContain("NOT a trusted key");
});

test("says whose key it is by the studio's list, and fails with 1 when it is not on it", async () => {
  const list = await write("trusted.json", listText([{ key: signer.publicKey, name: "Station 2" }]));
  const { code, said } = await run(good, "--trusted", list);
  expect(code).toBe(0);
  expect(said).toContain("(a trusted key: Station 2)");
  const none = await write("none.json", listText([]));
  expect(await run(good, "--trusted", none)).toMatchObject({
    code: 1,
    said: expect.stringContaining("NOT a trusted key"),
  });
});

test("prints the verdict as JSON", async () => {
  const { code, said } = await run(good, "--json");
  expect(code).toBe(0);
  expect(JSON.parse(said)).toMatchObject({ passed: true, intact: { ok: true }, follows: { ok: true } });
});

test("fails with 1 and one clear line for a file that is no record", async () => {
  const { code, said } = await run(await write("text.json", "some words"));
  expect(code).toBe(1);
  expect(said).toContain('NO: not-json at character 0; expected JSON, found "some words" at character 0');
});

test.each([
  [[], "Which record?"],
  [["a.json", "b.json"], "One record at a time."],
  [["--sing"], "Unknown option '--sing'"],
  [["a.json", "--trust", "xyz"], '"xyz" is not a public key'],
  [["a.json", "--trusted", good], "This is not a list of trusted keys"],
  [["a.json", "--trusted", join(folder, "no.json")], "no.json cannot be read (ENOENT)"],
  [[join(folder, "missing.json")], "cannot be read (ENOENT)"],
  [[folder], "cannot be read (EISDIR)"],
])("answers the usage %j with one line and 2", async (argv, line) => {
  const { code, said } = await run(...argv);
  expect(code).toBe(2);
  expect(said).toContain(line);
  expect(said.trimEnd().split("\n").length).toBe(1);
});

test("explains itself", async () => {
  const { code, said } = await run("--help");
  expect(code).toBe(0);
  expect(said).toContain("Exit code 0: passed. 1: failed. 2: wrong usage");
});
