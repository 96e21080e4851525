/** What export_tuned.py writes, read by the ear. Left out, saying so, where there is no Python with numpy. */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { loadModel } from "../../src/recogniser/network/loadModel";
import { modelFile } from "../../src/recogniser/network/modelFile";
import { madeModel, wide } from "../../tests/support/madeModel";
import { tempFolder } from "../../tests/support/tempFolder";

const python = process.env.PYTHON ?? "python3";
const missing = spawnSync(python, ["-c", "import numpy"]).status === 0 ? null : "no Python with numpy";
const folder = tempFolder("export");

/** A made-up model, stored as `weights`, whose first weights are these. */
function modelBeginning(name: string, weights: "float16" | "float32", first: readonly number[]): string {
  const { description, binary } = madeModel({ ...wide, weights });
  const file = modelFile.parse(JSON.parse(description));
  const view = new DataView(binary.buffer, binary.byteOffset);
  const convolution = file.layers.find((layer) => layer.kind === "conv2d");
  for (const [n, x] of first.entries()) view.setFloat32((convolution?.weight.byteOffset ?? 0) + 4 * n, x, true);
  const sha256 = createHash("sha256").update(binary).digest("hex");
  mkdirSync(join(folder, name));
  writeFileSync(join(folder, name, "model.bin"), binary);
  writeFileSync(join(folder, name, "model.json"), JSON.stringify({ ...file, binary: { ...file.binary, sha256 } }));
  return name;
}

const exported = (from: string, to: string, ...options: readonly string[]) =>
  spawnSync(python, ["audio/make/export_tuned.py", join(folder, from), join(folder, to), ...options], {
    encoding: "utf8",
    env: { ...process.env, VOICE_LANGUAGE: "en" },
  });
const binaryOf = (name: string) => readFileSync(join(folder, name, "model.bin"));
async function firstWeights(name: string, count: number) {
  const loaded = await loadModel(readFileSync(join(folder, name, "model.json"), "utf8"), binaryOf(name));
  if (!loaded.ok) throw new Error(loaded.message);
  const convolution = loaded.model.file.layers.find((layer) => layer.kind === "conv2d");
  return convolution && [...loaded.model.numbers(convolution.weight).subarray(0, count)];
}

describe.skipIf(missing)(`exporting a model${missing ? ` (${missing})` : ""}`, () => {
  test("keeps one of other sizes that is in halves as it is, byte for byte", () => {
    modelBeginning("halves", "float16", []);
    expect(exported("halves", "halvesAgain", "--half").status).toBe(0);
    expect(binaryOf("halvesAgain").equals(binaryOf("halves"))).toBe(true);
  });

  test("keeps float32 as it is, byte for byte, where halves are not asked for", () => {
    modelBeginning("floats", "float32", [1 / 3, 1e6]);
    expect(exported("floats", "floatsAgain").status).toBe(0);
    expect(binaryOf("floatsAgain").equals(binaryOf("floats"))).toBe(true);
  });

  test("rounds to the nearest half, and half-way to the even one", async () => {
    const given = [1 + 2 ** -11, 1 + 3 * 2 ** -11, 1 + 2 ** -11 + 2 ** -23, 1 / 3, 2 ** -25, 3 * 2 ** -25, 65_519];
    modelBeginning("odd", "float32", given);
    expect(exported("odd", "rounded", "--half").status).toBe(0);
    expect(await firstWeights("rounded", 7)).toEqual([1, 1 + 2 ** -9, 1 + 2 ** -10, 1365 / 4096, 0, 2 ** -23, 65_504]);
  });

  test.each([65_520, Number.POSITIVE_INFINITY, Number.NaN])("refuses a weight of %d as a half", (weight) => {
    const name = modelBeginning(`large${weight}`, "float32", [weight]);
    const { status, stderr } = exported(name, `no${weight}`, "--half");
    expect(status).not.toBe(0);
    expect(stderr).toContain("does not fit into float16: export without --half");
    expect(() => binaryOf(`no${weight}`)).toThrow("ENOENT");
  });
});
