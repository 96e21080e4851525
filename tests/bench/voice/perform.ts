/** Does the jobs of a run: here, or spread over processes that each take their share. */
import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { PhraseModel } from "../../../src/recogniser";
import { PhraseNet } from "../../../src/recogniser/network/phraseNet";
import { heardBy, type Judged, mixed } from "./clips";
import { type Job, jobsOf, type Sounds, soundsAtHand, type Wishes } from "./plan";
import { type Listened, listenedTo, soundOf } from "./stretches";

/** Null where what the job needs is not installed. */
export type Done = ({ readonly of: "clip" } & Judged) | ({ readonly of: "stretch" } & Listened) | null;

/** The sound of a job, for any recogniser. */
export function soundFor(job: Job, { material, noises }: Sounds): Float32Array | null {
  if (job.of === "stretch") return soundOf(job.stretch, material);
  const { clip, condition } = job;
  const noise = condition.noise === null ? null : noises[condition.noise];
  return condition.noise !== null && noise === null ? null : mixed(clip, condition, noise).sound;
}

export function worker(model: PhraseModel, sounds: Sounds): (job: Job) => Done {
  const net = new PhraseNet(model);
  return (job) => {
    if (job.of === "clip") {
      const { clip, condition } = job;
      const noise = condition.noise === null ? null : sounds.noises[condition.noise];
      if (condition.noise !== null && noise === null) return null;
      return { of: "clip", ...heardBy(model, net, clip, condition.name, mixed(clip, condition, noise)) };
    }
    const sound = soundOf(job.stretch, sounds.material);
    return sound && { of: "stretch", ...listenedTo(model, net, job.stretch, sound) };
  };
}

export interface Share {
  /** Places in the list of jobs. */
  readonly numbers: readonly number[];
  readonly wishes: Wishes;
  readonly forMs: number | null;
  readonly modelFolder: string | null;
}
export interface Told {
  readonly number: number;
  readonly done: Done;
}

/**
 * @param known What an earlier run of the same has heard; those jobs are not done again.
 * @param stopAtMs By `performance.now()`: nothing is begun after it.
 * @param keep  Told of each job as it is done.
 * @returns what came of each job, in their order.
 */
export async function performAll(
  model: PhraseModel,
  modelFolder: string | null,
  wishes: Wishes,
  parts: number,
  known: readonly Told[],
  stopAtMs: number,
  keep: (told: Told, left: number) => void,
): Promise<readonly Done[]> {
  const jobs = jobsOf(wishes);
  const results: Done[] = new Array(jobs.length).fill(null);
  for (const { number, done } of known) results[number] = done;
  const isKnown = new Set(known.map(({ number }) => number));
  const left = jobs.flatMap((_, number) => (isKnown.has(number) ? [] : [number]));
  let count = left.length;
  const take = (told: Told) => {
    results[told.number] = told.done;
    keep(told, --count);
  };
  if (parts === 1) {
    const work = worker(model, soundsAtHand());
    for (const number of left) {
      if (performance.now() > stopAtMs) break;
      take({ number, done: work(jobs[number] as Job) });
    }
    return results;
  }
  const shares = Array.from({ length: parts }, (_, part) => left.filter((_, n) => n % parts === part));
  await Promise.all(
    shares.map((numbers) => inProcess({ numbers, wishes, modelFolder, forMs: stopAtMs - performance.now() }, take)),
  );
  return results;
}

function inProcess(share: Share, take: (told: Told) => void): Promise<void> {
  const child = fork(fileURLToPath(new URL("./part.ts", import.meta.url)));
  child.send(share);
  child.on("message", (told) => take(told as Told));
  return new Promise((done, fail) => {
    child.on("exit", (code) =>
      code === 0 ? done() : fail(new Error(`a part of the benchmark ended with code ${code}`)),
    );
  });
}
