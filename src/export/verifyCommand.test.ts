import { truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { tempFolder } from "../../tests/support/tempFolder";
import { marker, packed } from "../bundle/container";
import { makeClosing, newSigner } from "../log";
import { listText } from "../trust/trustedKeys";
import { recordText } from "./recordFile";
import { live } from "./samples/lived";
import { remade } from "./samples/remake";
import { wholeSession } from "./samples/wholeSession";
import { sealRecord } from "./sealRecord";
import { verify } from "./verifyCommand";

const signer = await newSigner();
const { journal, writer } = await live(inputFor(smallProtocol), wholeSession, signer);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const folder = tempFolder("verify");
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
    "PASSED",
    "record     202",
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
  expect(said.split("\n").slice(0, 6)).toEqual([
    "NOT PASSED",
    expect.stringMatching(/^record {5}2026-11-25 09:00, Station 1, Artist A, client C-001, Small 1.0.0, session /),
    "intact     NO. A fact was altered. [altered-entry]",
    expect.stringMatching(/^ {11}where {5}fact 41, v1\.\w+ at 09:\d\d:\d\d$/),
    expect.stringMatching(/^ {11}expected {2}[0-9a-f]{64}$/),
    expect.stringMatching(/^ {11}found {5}[0-9a-f]{64}$/),
  ]);
  // The seal is whole, and by the key: it must not read as if the key had signed this.
  expect(said).toContain("That key sealed something else than what stands in this file.");
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
  expect(said).toMatch(
    /^NOT PASSED\nintact {5}NO\. The file breaks off or is damaged: it is no longer JSON\. \[not-json\]\n/,
  );
  expect(said).toContain('found     "some words" at character 0');
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

test("takes the record out of a page that carries it, and says so where there is none", async () => {
  const page = packed(`<!doctype html>${marker}`, sealed.text) ?? "";
  expect(await run(await write("page.html", page))).toMatchObject({
    code: 0,
    said: expect.stringMatching(/^PASSED\n/),
  });
  expect(await run(await write("empty.html", "<!doctype html>"))).toMatchObject({
    code: 2,
    said: expect.stringContaining("is a page that holds no record."),
  });
});

test("tells where a fact was taken out, what should stand there and what does", async () => {
  const copy = structuredClone(sealed.record);
  const at = copy.entries.findIndex(({ fact }) => fact.type === "v1.Deviation");
  copy.entries.splice(at, 1);
  const { code, said } = await run(await write("less.json", recordText(await remade(copy, signer))));
  expect(code).toBe(1);
  expect(said).toContain(`where     fact ${at + 1}, v1.StepEntered at `);
  expect(said).toContain('expected  {"type":"v1.Deviation","code":"stepLeftOut"');
});

test("tells what of a fact was made another, and of a list how many it should hold", async () => {
  const copy = structuredClone(sealed.record);
  for (const { fact } of copy.entries)
    if (fact.type === "v1.WetClockStarted") Object.assign(fact, { neededMs: 60_000 });
  const { said } = await run(await write("short.json", recordText(await remade(copy, signer))));
  expect(said).toContain("expected  v1.WetClockStarted with neededMs: 180000");
  expect(said).toContain("found     v1.WetClockStarted with neededMs: 60000");

  const { entries, signatures, closing } = sealed.record;
  if (!closing) throw new Error("not sealed");
  const summary = { ...closing.summary, deviations: closing.summary.deviations.slice(1) };
  const again = await makeClosing(
    { entries, signatures, head: closing.seal.head },
    summary,
    closing.seal.sealedAt,
    signer,
  );
  const told = await run(await write("fewer.json", recordText({ ...sealed.record, closing: again })));
  const all = closing.summary.deviations.length;
  expect(told.said).toContain(`expected  ${all} deviations, number 1: {"n":7,"code":"stepLeftOut"`);
  expect(told.said).toContain(`found     ${all - 1} deviations, number 1: {"n":20,"code":"touchedUnplanned"`);
});

test("200 MB are refused unread, in one line", async () => {
  const large = await write("large.json", "");
  await truncate(large, 200_000_000);
  const { code, said } = await run(large);
  expect(code).toBe(2);
  expect(said).toMatch(/^\S+ has 200000000 bytes; no record has more than \d+\. Try: gloveside verify --help\n$/);
});

test.each([
  ["__proto__", "wrong-shape"],
  ["constructor", "wrong-shape"],
  ["toString", "wrong-shape"],
])("a record with a key %s is refused, and reaches no prototype", async (key, code) => {
  const hostile = sealed.text.replace('{"closing"', `{"${key}":{"ok":true},"closing"`);
  expect(await run(await write("key.json", hostile))).toMatchObject({
    code: 1,
    said: expect.stringContaining(`[${code}]`),
  });
  expect(({} as { ok?: boolean }).ok).toBeUndefined();
});

test("what a hostile file says of itself stays in its line, with nothing in it that a terminal obeys", async () => {
  const hostile = sealed.text.replace('"Artist A"', JSON.stringify("A\u001b[2J\nPASSED"));
  const { said } = await run(await write("terminal.json", hostile));
  expect(said).toMatch(/^NOT PASSED\nrecord {5}.*A\?\[2J\?PASSED/);
  expect(said.split("\n").filter((line) => line === "PASSED")).toEqual([]);
});

test("explains itself", async () => {
  const { code, said } = await run("--help");
  expect(code).toBe(0);
  expect(said).toContain("Exit code 0: passed. 1: failed. 2: wrong usage");
});
