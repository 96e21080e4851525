/**
 * The whole training in small, on a processor: renders some clips, mixes them, trains a fresh head for a moment, writes the
 * model's two files and has the ear listen with them. It proves the way there and nothing about quality. `npm run train:small`,
 * two minutes; needs Debian's python3-torch, python3-scipy and espeak-ng. Writes to out/small and nowhere else.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { z } from "zod";
import { hearWav } from "../../src/recogniser/hearWav";
import { loadModel } from "../../src/recogniser/network/loadModel";

const python = "/usr/bin/python3";
const work = "out/small";
const folder = `${work}/model`;
const steps = 80;

function missing(): readonly string[] {
  const lacks = (name: string) => spawnSync(python, ["-c", `import ${name}`]).status !== 0;
  const modules = [["torch", "python3-torch"] as const, ["scipy", "python3-scipy"] as const];
  const packages = modules.filter(([name]) => lacks(name)).map(([, debian]) => debian);
  return spawnSync("espeak-ng", ["--version"]).status === 0 ? packages : [...packages, "espeak-ng"];
}

function run(script: string, ...args: string[]): void {
  console.log(`${script} ${args.join(" ")}`);
  const env = { ...process.env, VOICE_LANGUAGE: "en", VOICE_WORK: work, OMP_NUM_THREADS: "1" };
  execFileSync(python, [`audio/make/${script}`, ...args], { stdio: "inherit", env });
}

const Log = z.object({ steps: z.number(), windows: z.number(), lossBefore: z.number(), lossAfter: z.number() });
const Rows = z.array(z.object({ path: z.string(), label: z.string() }));

async function main(): Promise<void> {
  const lacking = missing();
  if (lacking.length > 0) throw new Error(`this needs Debian packages. As root: apt-get install ${lacking.join(" ")}`);
  run("render_more.py", "--small");
  run("gather.py", "train", "96", "--pool", "128", "--seed", "1");
  run(
    "fine_tune.py",
    "--untrained",
    "--steps",
    String(steps),
    "--rate",
    "0.002",
    "--batch",
    "128",
    "--out",
    `${work}/tuned`,
  );
  run("export_tuned.py", "--half", `${work}/tuned/weights.npz`, folder);
  const log = Log.parse(JSON.parse(readFileSync(`${work}/tuned/log.json`, "utf8")));
  console.log(`loss ${log.lossBefore.toFixed(3)} before, ${log.lossAfter.toFixed(3)} after ${log.steps} steps`);
  if (!(log.lossAfter < log.lossBefore * 0.8)) throw new Error("the loss did not fall by a fifth: training is broken");
  const loaded = await loadModel(readFileSync(`${folder}/model.json`, "utf8"), readFileSync(`${folder}/model.bin`));
  if (!loaded.ok) throw new Error(`the ear refuses the model: ${loaded.message}`);
  const clip = Rows.parse(JSON.parse(readFileSync(`${work}/en/more/clips.json`, "utf8"))).find(
    (row) => row.label !== "none",
  );
  if (clip === undefined) throw new Error("nothing was rendered");
  const heard = hearWav(readFileSync(pathToFileURL(clip.path)), { model: loaded.model });
  if (!heard.ok) throw new Error(heard.message);
  console.log(
    `The ear listened to ${heard.soundMs} ms with the new model (${loaded.model.digest.slice(0, 12)}). The way works.`,
  );
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
