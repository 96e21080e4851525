/** Does the jobs of a run: here, or spread over processes that each take their share. */
import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { PhraseModel } from "../../../src/recogniser";
import { PhraseNet } from "../../../src/recogniser/network/phraseNet";
import { heardBy, type Judged, mixed } from "./clips";
import { makingMs } from "./kept";
import { type Job, type Sounds, soundsAtHand } from "./plan";
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

/** Time that went into sounds that were not kept from an earlier run, into mixing them and into listening. */
export interface Spent {
  readonly makingMs: number;
  readonly mixingMs: number;
  readonly hearingMs: number;
}
export interface Worked {
  readonly done: Done;
  readonly spent: Spent;
}

export function worker(model: PhraseModel, sounds: Sounds): (job: Job) => Worked {
  const net = new PhraseNet(model);
  return (job) => {
    const [beganAt, madeBefore] = [performance.now(), makingMs()];
    const hear = readied(job, model, net, sounds);
    const [readyAt, making] = [performance.now(), makingMs() - madeBefore];
    const done = hear?.() ?? null;
    const hearing = performance.now() - readyAt;
    return { done, spent: { makingMs: making, mixingMs: readyAt - beganAt - making, hearingMs: hearing } };
  };
}

/** Mixes the sound of a job at once, and listens to it when asked to. */
function readied(
  job: Job,
  model: PhraseModel,
  net: PhraseNet,
  { material, noises }: Sounds,
): (() => NonNullable<Done>) | null {
  if (job.of === "stretch") {
    const sound = soundOf(job.stretch, material);
    return sound && (() => ({ of: "stretch", ...listenedTo(model, net, job.stretch, sound) }));
  }
  const { clip, condition } = job;
  const noise = condition.noise === null ? null : noises[condition.noise];
  if (condition.noise !== null && noise === null) return null;
  const sound = mixed(clip, condition, noise);
  return () => ({ of: "clip", ...heardBy(model, net, clip, condition.name, sound) });
}

export interface Share {
  readonly jobs: readonly { readonly number: number; readonly job: Job }[];
  readonly forMs: number | null;
  readonly modelFolder: string | null;
}
export interface Told extends Worked {
  /** Place in the list of jobs. */
  readonly number: number;
}

export interface Run {
  readonly jobs: readonly Job[];
  /** Read by the processes that do their share. */
  readonly modelFolder: string | null;
  readonly processes: number;
  /** What an earlier run has heard, for each job; null where none has. */
  readonly known: readonly Done[];
  /** By `performance.now()`: nothing is begun after it. */
  readonly stopAtMs: number;
  /** Told of each job as it is done, and of how many are left. */
  readonly keep: (job: Job, done: Done, left: number) => void;
}

/** @returns what came of each job, in their order, and the time of all processes together. */
export async function performAll(
  model: PhraseModel,
  run: Run,
): Promise<{ readonly done: readonly Done[]; readonly spent: Spent }> {
  const { jobs, modelFolder, processes, known, stopAtMs, keep } = run;
  const results: Done[] = [...known];
  const toDo = jobs.flatMap((job, number) => (known[number] ? [] : [{ number, job }]));
  let left = toDo.length;
  let spent: Spent = { makingMs: 0, mixingMs: 0, hearingMs: 0 };
  const take = ({ number, done, spent: { makingMs, mixingMs, hearingMs } }: Told) => {
    results[number] = done;
    spent = {
      makingMs: spent.makingMs + makingMs,
      mixingMs: spent.mixingMs + mixingMs,
      hearingMs: spent.hearingMs + hearingMs,
    };
    keep(jobs[number] as Job, done, --left);
  };
  if (processes === 1) {
    const work = worker(model, soundsAtHand());
    for (const { number, job } of toDo) {
      if (performance.now() > stopAtMs) break;
      take({ number, ...work(job) });
    }
    return { done: results, spent };
  }
  const shares = Array.from({ length: processes }, (_, part) => toDo.filter((_, n) => n % processes === part));
  await Promise.all(
    shares.map((mine) => inProcess({ jobs: mine, modelFolder, forMs: stopAtMs - performance.now() }, take)),
  );
  return { done: results, spent };
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
