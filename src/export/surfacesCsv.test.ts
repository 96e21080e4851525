/** One row a surface, read back by a reader of RFC 4180 written apart from the writer. */
import { expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { newSigner } from "../log";
import { Protocol } from "../session/protocol";
import { recordOf } from "./recordFile";
import { live } from "./samples/lived";
import { readCsv } from "./samples/readCsv";
import { wholeSession } from "./samples/wholeSession";
import { surfacesCsv } from "./surfacesCsv";

const signer = await newSigner();
const rowsOf = async (input = inputFor(smallProtocol)) => {
  const [head = [], ...rows] = readCsv(surfacesCsv(recordOf((await live(input, wholeSession, signer)).kept)));
  return rows.map((row) => Object.fromEntries(row.map((value, at) => [head[at], value])));
};

test("says needed and watched seconds and how it ended, of the run that counts", async () => {
  expect(await rowsOf()).toMatchObject([
    { surface: "chair", product: "surface disinfectant A", neededSec: "180", watchedSec: "180", ended: "ready" },
    { surface: "lamp", neededSec: "180", watchedSec: "180", ended: "ready", earlierRuns: "wipedEarly at 60 s" },
  ]);
});

test("makes a formula in a product's or a station's name inert", async () => {
  const [slot] = smallProtocol.products;
  const evil = '=HYPERLINK("http://localhost/";"x")';
  const products = slot ? [{ ...slot, label: { ...slot.label, name: { en: evil } } }] : [];
  const input = inputFor(Protocol.parse({ ...smallProtocol, products }), { station: "+cmd|' /C calc'!A0" });
  for (const { product, station } of await rowsOf(input)) {
    expect([product, station]).toEqual([`'${evil}`, "'+cmd|' /C calc'!A0"]);
  }
});
