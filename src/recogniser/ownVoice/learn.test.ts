import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { shippedModel } from "../network/shippedModel";
import { learnVoice, teachable } from "./learn";
import { readNegatives } from "./negativesFile";

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
const description = readFileSync("public/own-voice/negatives.json", "utf8");
const stored = readNegatives(description, readFileSync("public/own-voice/negatives.bin"), model.digest) ?? [];

test("once a voice was taught, every phrase has to be nearly certain: what resembles it has become surer too", () => {
  const { thresholds } = learnVoice(model, "station", [], [], stored.slice(0, 64));
  expect(Object.keys(thresholds).toSorted()).toEqual([...teachable(model)].toSorted());
  expect(Object.values(thresholds).filter((least) => least < 0.85 || least > 0.95)).toEqual([]);
});
