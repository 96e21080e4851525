/** One process of several: does its share of the jobs and tells what came of each. */
import { pathToFileURL } from "node:url";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { type Share, type Told, worker } from "./perform";
import { type Job, jobsOf, soundsAtHand } from "./plan";

process.once("message", async (message) => {
  const { numbers, wishes, modelFolder, forMs } = message as Share;
  const stopAtMs = performance.now() + (forMs ?? Number.POSITIVE_INFINITY);
  const loaded = await shippedModel(modelFolder === null ? undefined : pathToFileURL(`${modelFolder}/`));
  if (!loaded.ok) throw new Error(loaded.message);
  const work = worker(loaded.model, soundsAtHand());
  const jobs = jobsOf(wishes);
  for (const number of numbers) {
    if (performance.now() > stopAtMs) break;
    const told: Told = { number, done: work(jobs[number] as Job) };
    await new Promise<void>((sent) => process.send?.(told, () => sent()));
  }
  process.disconnect();
});
