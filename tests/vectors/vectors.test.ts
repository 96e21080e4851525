/** Golden records of each format: what each of them must say, for as long as there is a verifier. */
import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { verifyRecord } from "../../src/export";

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
])("%s: %s", async (name, _story, verdict) => {
  const bytes = await readFile(new URL(name, import.meta.url));
  expect(await verifyRecord(bytes)).toMatchObject(verdict);
});
