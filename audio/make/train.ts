/**
 * The whole training run of one language, from the synthesisers to the two files of the model: `npm run train -- [en|es] [options]`.
 * Needs a GPU with PyTorch and the packages of manifest.json; MODEL.md says where each step can run. Everything is made in out/, the
 * model is written to public/voice at the end. With --small it runs on a processor in minutes, into out/trial, and proves the way only.
 */
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { parseArgs } from "node:util";

const usage = `Usage: npm run train -- [en|es] [--seconds N] [--from base|shipped] [--small]
  --seconds N   how long to train (default 1200)
  --from WHAT   shipped: go on from public/voice (default); base: from the pretrained embedding, which new phrases need
  --half        keep weight matrices as float16: half the size
  --small       a few clips, on a processor, into out/trial`;

function wishes() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      seconds: { type: "string", default: "1200" },
      from: { type: "string", default: "shipped" },
      half: { type: "boolean", default: false },
      small: { type: "boolean", default: false },
    },
  });
  const language = positionals[0] ?? "en";
  const seconds = Number(values.seconds);
  const isKnown = ["en", "es"].includes(language) && ["base", "shipped"].includes(values.from) && seconds > 0;
  if (!isKnown || positionals.length > 1) throw new Error(usage);
  return { language, seconds, from: values.from, half: values.half, small: values.small };
}

function main(): void {
  const { language, seconds, from, half, small } = wishes();
  const work = small ? "out/trial" : "out";
  const mine = `${work}/${language}`;
  const env = { ...process.env, VOICE_LANGUAGE: language, VOICE_WORK: work };
  const run = (script: string, ...args: readonly string[]) => {
    console.log(`${script} ${args.join(" ")}`);
    execFileSync(process.env.PYTHON ?? "python3", [`audio/make/${script}`, ...args], { stdio: "inherit", env });
  };
  const briefly = small ? ["--small"] : [];
  run("render.py", ...briefly);
  run("pack.py", ...briefly);
  const start = from === "shipped" ? ["--shipped"] : [];
  run("train.py", ...briefly, ...start, "--seconds", String(seconds), "--out", `${mine}/run`);
  run("pack_test.py");
  const little = small ? ["--limit", "12"] : ["--passes", "14"];
  run("score.py", `${mine}/run/weights.npz`, `${mine}/run`, "development", "test", ...little);
  run("evaluate.py", "choose", `${mine}/run`);
  run("evaluate.py", "report", `${mine}/run`);
  const target = small ? `${mine}/model` : language === "en" ? "public/voice" : `public/voice/${language}`;
  const halves = half ? ["--half"] : [];
  run("export_tuned.py", ...halves, `${mine}/run/weights.npz`, target, `${mine}/run/thresholds.json`);
  if (!existsSync(`${target}/model.bin`)) throw new Error(`${target}/model.bin was not written`);
  console.log(
    `The model lies in ${target}. Next: audio/make/golden.py, npm run negatives, npm run bench:voice, and the model card.`,
  );
}

try {
  main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
