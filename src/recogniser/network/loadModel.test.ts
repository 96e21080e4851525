import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { tensorsIn } from "./layout";
import { loadModel } from "./loadModel";
import { countOf, endOf, type TensorPlace } from "./modelFile";
import { headOf } from "./weightsOf";

const read = (name: string) => readFileSync(new URL(`../../../public/voice/${name}`, import.meta.url));
const description = read("model.json").toString("utf8");
const binary = new Uint8Array(read("model.bin"));
// biome-ignore lint/suspicious/noExplicitAny: the tests spoil the description in ways its type would not allow
const spoilt = (spoil: (file: any) => void) => {
  const file = JSON.parse(description);
  spoil(file);
  return JSON.stringify(file);
};
/** The shipped model with the tensor of its last bias kept as halves of 1, and with `more` bytes behind it all. */
const withHalves = (more: number) => {
  const longer = new Uint8Array(binary.length + more);
  longer.set(binary);
  const text = spoilt((f) => {
    const { bias } = f.layers.at(-1);
    bias.dtype = "float16";
    new Uint16Array(longer.buffer, bias.byteOffset, bias.shape[0]).fill(0x3c00);
    f.binary.bytes = longer.length;
    f.binary.sha256 = createHash("sha256").update(longer).digest("hex");
  });
  return [text, longer] as const;
};
const codeOf = async (text: string, bytes = binary) => {
  const loaded = await loadModel(text, bytes);
  return loaded.ok ? "ok" : loaded.code;
};

/** Moves a tensor so that its last number, and no other, ends behind the binary. */
const outside = (place: TensorPlace, dtype: TensorPlace["dtype"]) => {
  const all = countOf(place) * (dtype === "float16" ? 2 : 4);
  Object.assign(place, { dtype, byteOffset: binary.length - all + 4 });
};
/** Moves the second layer's weights back over the last of the first layer's. */
// biome-ignore lint/suspicious/noExplicitAny: as above
const overlapping = ([first, second]: any, dtype: TensorPlace["dtype"]) => {
  first.bias.dtype = dtype;
  second.weight.byteOffset = endOf(first.bias) - 4;
};
const halvesAt = (place: TensorPlace, by: number) =>
  Object.assign(place, { dtype: "float16", byteOffset: place.byteOffset + by });

/** The description with its n-th value that is neither list nor object replaced. */
function withOneChanged(which: number, value: unknown): string {
  const turn = which % leaves(JSON.parse(description));
  let at = 0;
  return JSON.stringify(JSON.parse(description, (_, old) => (isLeaf(old) && at++ === turn ? value : old)));
}
const isLeaf = (value: unknown) => typeof value !== "object" || value === null;
const leaves = (value: unknown): number =>
  isLeaf(value) ? 1 : Object.values(value as object).reduce((sum: number, one) => sum + leaves(one), 0);

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

  test.each([0, 1, 2, 3])("gives halves as the numbers that they are, with %i bytes behind them", async (more) => {
    const loaded = await loadModel(...withHalves(more));
    const head = loaded.ok ? headOf(loaded.model) : null;
    expect(head?.bias).toEqual(new Float32Array(head?.bias.length ?? 0).fill(1));
    expect(head?.weights.some((x) => Math.abs(x) > 1e-3)).toBe(true);
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
    ["one whose halves reach outside", spoilt((f) => outside(f.layers.at(-1).bias, "float16")), "bad-layout"],
    ["one whose floats reach outside", spoilt((f) => outside(f.layers.at(-1).bias, "float32")), "bad-layout"],
    ["tensors that overlap", spoilt((f) => overlapping(f.layers, "float32")), "bad-layout"],
    ["halves that overlap", spoilt((f) => overlapping(f.layers, "float16")), "bad-layout"],
    ["numbers of another kind", spoilt((f) => Object.assign(f.layers[0].weight, { dtype: "int8" })), "bad-description"],
    ["halves at an odd place", spoilt((f) => halvesAt(f.layers[0].weight, 2)), "bad-description"],
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

  property.prop([fc.nat(), fc.oneof(fc.jsonValue(), fc.constantFrom("float16", "float32", 0, 2, 4, 1e9))])(
    "never rejects a description with any one value changed, nor fails to give the numbers of one that it takes",
    async (which, value) => {
      const loaded = await loadModel(withOneChanged(which, value), binary);
      const read = () => loaded.ok && tensorsIn(loaded.model.file).map(loaded.model.numbers);
      expect(read).not.toThrow();
    },
  );
});
