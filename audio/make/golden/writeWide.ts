/** Makes golden/wide.json: what the numpy reference gets from a made-up model of wider layers, kept as halves. `npx tsx audio/make/golden/writeWide.ts` */
import { execFileSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { madeModel, wide } from "../../../tests/support/madeModel";

const folder = "out/wide";
const { description, binary } = madeModel(wide);
mkdirSync(folder, { recursive: true });
writeFileSync(`${folder}/model.json`, description);
writeFileSync(`${folder}/model.bin`, binary);
const python = process.env.PYTHON ?? "python3";
execFileSync(python, ["audio/make/golden.py", folder, "audio/make/golden/wide.json"], { stdio: "inherit" });
