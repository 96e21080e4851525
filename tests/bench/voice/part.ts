/** One process of several: does every so-manyth job and tells what came of it. */
import { pathToFileURL } from "node:url";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { type Share, type Told, worker } from "./perform";
import { jobsOf, soundsAtHand } from "./plan";

const { part, parts, wishes, modelFolder } = JSON.parse(process.argv[2] ?? "{}") as Share;
const loaded = await shippedModel(modelFolder === null ? undefined : pathToFileURL(`${modelFolder}/`));
if (!loaded.ok) throw new Error(loaded.message);
const work = worker(loaded.model, soundsAtHand());
for (const [number, job] of jobsOf(wishes).entries()) {
  if (number % parts !== part) continue;
  const told: Told = { number, done: work(job) };
  await new Promise<void>((sent) => process.send?.(told, () => sent()));
}
process.disconnect();
