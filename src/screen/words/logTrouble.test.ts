import { expect, test } from "vitest";
import { wordsFor } from ".";
import { logTrouble } from "./logTrouble";

const [en, es] = [wordsFor("en"), wordsFor("es")];

test.each(Object.keys(en.logTrouble))("tells %s in words of each language", (code) => {
  expect(logTrouble(en, code)).toMatch(/^[A-Z].*\.$/);
  expect(logTrouble(es, code)).toMatch(/^[A-ZÁÉ].*\.$/);
  expect(logTrouble(es, code)).not.toBe(logTrouble(en, code));
});

test.each(["QuotaExceeded", "__proto__", "toString", ""])("says that something failed where the code is %j", (code) => {
  expect(logTrouble(es, code)).toBe(es.logTrouble.failed);
});
