/** Golden records of each format: what each of them must say, for as long as there is a verifier. */
import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { decide, resume } from "../../machines/session/decide";
import { replay, verifyRecord } from "../../src/export";
import type { RecordFile } from "../../src/export/recordFile";

const passed = { intact: { ok: true }, signedBy: { ok: true }, follows: { ok: true } };

const noteAt = 21;
const differsAt = (n: number) => ({
  intact: { ok: false, code: "personal-differs", at: { part: "personal", n } },
  signedBy: { ok: true },
  follows: { ok: true },
});

test.each([
  ["v1-good.json", "an ordinary session, sealed", passed],
  [
    "v1-unfinished.json",
    "the same before it was sealed",
    { ...passed, intact: { ok: false, code: "not-sealed", at: { part: "seal" } } },
  ],
  [
    "v1-entry-altered.json",
    "what was said made out as measured",
    {
      intact: { ok: false, code: "altered-entry", at: { part: "entry", n: 41 } },
      signedBy: { ok: true },
      follows: { ok: false, code: "summary-differs" },
    },
  ],
  [
    "v1-entry-removed.json",
    "the deviation of an early wipe taken out",
    { intact: { ok: false, code: "wrong-number", at: { part: "entry", n: 61 } }, follows: { ok: false } },
  ],
  [
    "v1-end-cut-off.json",
    "the last steps cut off",
    { intact: { ok: false, code: "entries-missing", at: { part: "entry", n: 91 } }, follows: { ok: false } },
  ],
  [
    "v1-hashed-again.json",
    "a longer contact time written in, everything hashed again without the key",
    { intact: { ok: true }, signedBy: { ok: false, code: "head-not-signed", at: { part: "entry", n: 75 } } },
  ],
  [
    "v1-signed-again.json",
    "the same with the key: only the replay finds it",
    {
      intact: { ok: true },
      signedBy: { ok: true },
      follows: { ok: false, code: "credit-differs", at: { part: "entry", n: 75 }, expected: "180000", found: "240000" },
    },
  ],
  [
    "v2-good.json",
    "a client's reference and a spoken note beside the chain",
    { ...passed, personal: { client: "kept", notes: { kept: 1, erased: 0, notIncluded: 0 } } },
  ],
  [
    "v2-unfinished.json",
    "the same before it was sealed",
    { ...passed, intact: { ok: false, code: "not-sealed" }, personal: { client: "kept" } },
  ],
  [
    "v2-all-erased.json",
    "reference and note erased on request: it verifies as before",
    { ...passed, personal: { client: "erased", notes: { kept: 0, erased: 1, notIncluded: 0 } } },
  ],
  [
    "v2-without-personal-part.json",
    "handed over without anything personal",
    { ...passed, personal: { client: "notIncluded", notes: { kept: 0, erased: 0, notIncluded: 1 } } },
  ],
  ["v2-other-client.json", "another client's reference put beside it", differsAt(0)],
  ["v2-other-salt.json", "the reference with another salt", differsAt(0)],
  ["v2-note-altered.json", "one byte of the note's sound changed", differsAt(noteAt)],
  ["v2-note-elsewhere.json", "the note put beside another fact", differsAt(noteAt + 1)],
  [
    "v2-commitment-altered.json",
    "the note's commitment exchanged in the chain itself",
    { intact: { ok: false, code: "altered-entry", at: { part: "entry", n: noteAt } }, signedBy: { ok: true } },
  ],
  [
    "v2-accident-rules-1.1.0.json",
    "an accident amid a change of gloves, and covers that were never there, as an app with rules 1.1.0 wrote it",
    { ...passed, intact: { ok: false, code: "not-sealed" } },
  ],
  ["v2-accident-rules-1.2.0.json", "the same by rules 1.2.0", { ...passed, intact: { ok: false, code: "not-sealed" } }],
  [
    "v2-notes-rules-1.3.0.json",
    "rules 1.3.0, whose summary names the spoken note",
    { ...passed, personal: { client: "kept", notes: { kept: 1, erased: 0, notIncluded: 0 } } },
  ],
  [
    "v2-notes-rules-1.3.0-not-told.json",
    "the same, sealed anew with the key and a summary without the note: only the replay finds it",
    {
      intact: { ok: true },
      signedBy: { ok: true },
      follows: { ok: false, code: "summary-differs", at: { part: "summary" } },
    },
  ],
  ["v2-out-of-use-rules-1.4.0.json", "a bottle was taken out of use, and left so", passed],
  [
    "v2-slip-rules-1.4.0.json",
    "a lamp touched when it was cleaned already, as an app with rules 1.4.0 wrote it",
    { ...passed, intact: { ok: false, code: "not-sealed" } },
  ],
  ["v2-slip-rules-1.5.0.json", "the same by rules 1.5.0", { ...passed, intact: { ok: false, code: "not-sealed" } }],
])("%s: %s", async (name, _story, verdict) => {
  const bytes = await readFile(new URL(name, import.meta.url));
  expect(await verifyRecord(bytes)).toMatchObject(verdict);
});

test.each([
  ["1.1.0", "1.2.0"],
  ["1.2.0", "1.1.0"],
])("what was lived by rules %s does not follow by rules %s: each record is read by its own", async (own, other) => {
  const text = await readFile(new URL(`v2-accident-rules-${own}.json`, import.meta.url), "utf8");
  const { header, entries } = JSON.parse(text) as RecordFile;
  expect(header.rules).toBe(own);
  expect(replay(own, header.input, entries)).toMatchObject({ ok: true });
  expect(replay(other, header.input, entries)).toMatchObject({ ok: false, code: "step-differs" });
});

test.each([
  ["1.4.0", "1.5.0"],
  ["1.5.0", "1.4.0"],
])("a slip in the breakdown lived by rules %s does not follow by rules %s", async (own, other) => {
  const text = await readFile(new URL(`v2-slip-rules-${own}.json`, import.meta.url), "utf8");
  const { header, entries } = JSON.parse(text) as RecordFile;
  expect(header.rules).toBe(own);
  expect(replay(own, header.input, entries)).toMatchObject({ ok: true });
  expect(replay(other, header.input, entries)).toMatchObject({ ok: false });
});

test.each(["1.1.0", "1.2.0"])("a session that was begun by rules %s goes on by them after an update", async (rules) => {
  const text = await readFile(new URL(`v2-accident-rules-${rules}.json`, import.meta.url), "utf8");
  const { header, entries } = JSON.parse(text) as RecordFile;
  const hurt = entries.findIndex(({ fact }) => fact.type === "v1.ExposureReported");
  const facts = entries.slice(0, hurt + 1).map(({ fact }) => fact);
  const resumed = decide(resume(header.input, facts, header.rules), { type: "session.resume" });
  const told = entries.slice(hurt + 1, hurt + 1 + resumed.facts.length).map(({ fact }) => fact.type);
  expect(resumed.facts.map((fact) => fact.type)).toEqual(told);
  let state = resumed.next;
  const walked: string[] = [];
  for (let i = 0; i < 6; i += 1) {
    const { next, facts: more } = decide(state, { type: "step.done" });
    walked.push(...more.flatMap((f) => (f.type === "v1.StepDone" ? [f.step] : [])));
    state = next;
  }
  expect(walked.includes("resumeGloves")).toBe(rules === "1.2.0");
});
