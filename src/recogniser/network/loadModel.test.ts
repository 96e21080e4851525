import { readFileSync } from "node:fs";
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { loadModel } from "./loadModel";

const read = (name: string) => readFileSync(new URL(`../../../public/voice/${name}`, import.meta.url));
const description = read("model.json").toString("utf8");
const binary = new Uint8Array(read("model.bin"));
// biome-ignore lint/suspicious/noExplicitAny: the tests spoil the description in ways its type would not allow
const spoilt = (spoil: (file: any) => void) => {
  const file = JSON.parse(description);
  spoil(file);
  return JSON.stringify(file);
};
const codeOf = async (text: string, bytes = binary) => {
  const loaded = await loadModel(text, bytes);
  return loaded.ok ? "ok" : loaded.code;
};

describe("loading the phrase model", () => {
  test("accepts the one that is shipped", async () => {
    expect(await codeOf(description)).toBe("ok");
  });

  test("accepts one that does not know a phrase of ours", async () => {
    const [last] = JSON.parse(description).outputs.commandIds.slice(-1);
    const fewer = spoilt((f) => {
      f.outputs.commandIds.pop();
      delete f.decision.thresholds[last];
      const dense = f.layers.at(-1);
      dense.outputs -= 1;
      dense.weight.shape[0] -= 1;
      dense.bias.shape[0] -= 1;
    });
    expect(await codeOf(fewer)).toBe("ok");
  });

  test("refuses one with a single byte changed", async () => {
    const changed = binary.slice();
    changed[1_000_000] = 255 - (changed[1_000_000] ?? 0);
    expect(await codeOf(description, changed)).toBe("wrong-digest");
  });

  test("refuses one cut short", async () => {
    expect(await codeOf(description, binary.subarray(0, -4))).toBe("wrong-length");
  });

  test.each([
    ["a description that is not JSON", "{", "bad-description"],
    ["another format", spoilt((f) => Object.assign(f, { format: "phrase-model/2" })), "bad-description"],
    ["an unknown key", spoilt((f) => Object.assign(f, { extra: 1 })), "bad-description"],
    ["another front end", spoilt((f) => Object.assign(f.frontEnd, { powerFloor: 2 })), "bad-description"],
    [
      "a tensor outside the binary",
      spoilt((f) => Object.assign(f.layers[0].weight, { byteOffset: 9e8 })),
      "bad-layout",
    ],
    ["a tensor of another shape", spoilt((f) => Object.assign(f.layers[0].weight, { shape: [24, 9] })), "bad-layout"],
    ["layers in another order", spoilt((f) => f.layers.reverse()), "bad-layout"],
    ["phrases of another language", spoilt((f) => Object.assign(f.outputs, { language: "es" })), "wrong-phrases"],
    ["other words", spoilt((f) => Object.assign(f.outputs.commandWords, { done: "all done" })), "wrong-phrases"],
    ["a command without a threshold", spoilt((f) => delete f.decision.thresholds.done), "wrong-phrases"],
    ["a command it never heard of", spoilt((f) => f.outputs.commandIds.push("dance")), "wrong-phrases"],
  ])("refuses %s", async (_, text, code) => {
    expect(await codeOf(text)).toBe(code);
  });

  property.prop([fc.string(), fc.uint8Array()])("never rejects, whatever it is given", async (text, bytes) => {
    expect((await loadModel(text, bytes)).ok).toBe(false);
  });
});
