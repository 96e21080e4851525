/** One process of several: does its share of the jobs and tells what came of each. */
import { pathToFileURL } from "node:url";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { type Share, type Told, worker } from "./perform";
import { soundsAtHand } from "./plan";

process.once("message", async (message) => {
  const { jobs, modelFolder, forMs } = message as Share;
  const stopAtMs = performance.now() + (forMs ?? Number.POSITIVE_INFINITY);
  const loaded = await shippedModel(modelFolder === null ? undefined : pathToFileURL(`${modelFolder}/`));
  if (!loaded.ok) throw new Error(loaded.message);
  const work = worker(loaded.model, soundsAtHand());
  for (const { number, job } of jobs) {
    if (performance.now() > stopAtMs) break;
    const told: Told = { number, ...work(job) };
    await new Promise<void>((sent) => process.send?.(told, () => setImmediate(sent)));
    // Broken off, which shows once there was time to look: nobody is told any more.
    if (!process.connected) return;
  }
  process.disconnect();
});
