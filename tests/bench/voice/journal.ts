/**
 * What has been heard so far, line by line in out/bench/journal, so that a run that was cut short goes on where it stopped,
 * and a longer one begins with what a shorter one heard. Bound to the phrase model, to the source of ear and benchmark and to
 * what they read: with another, it begins anew.
 */
import { createHash } from "node:crypto";
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { PhraseModel } from "../../../src/recogniser";
import type { Done } from "./perform";
import type { Job } from "./plan";

const folder = join("out", "bench", "journal");
const sources = ["src/recogniser", "src/intent", "src/rehearsal", "tests/bench/voice", "audio/make/rehearsal"];
const read = ["audio/make/held-out.json", "audio/make/allowed-now.json", "public/clips/en.json"];

export interface Journal {
  /** Null where the job has not been done. */
  known(job: Job): Done;
  /** What could not be done, for want of a package, is not written: it may be there next time. */
  write(job: Job, done: Done): void;
}

export function openJournal({ digest, descriptionDigest }: PhraseModel): Journal {
  const hash = createHash("sha256").update(`${digest} ${descriptionDigest}`);
  for (const file of [...sources.flatMap(programs), ...read]) hash.update(file).update(readFileSync(file));
  const path = join(folder, `${hash.digest("hex").slice(0, 24)}.jsonl`);
  mkdirSync(folder, { recursive: true });
  const lines = existsSync(path) ? readFileSync(path, "utf8").split("\n") : [];
  const known = new Map<string, Done>(lines.flatMap(lineOf));
  return {
    known: (job) => known.get(JSON.stringify(job)) ?? null,
    write: (job, done) => {
      if (done !== null) appendFileSync(path, `${JSON.stringify([JSON.stringify(job), done])}\n`);
    },
  };
}

const programs = (source: string): readonly string[] =>
  readdirSync(source, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
    .sort()
    .map((name) => join(source, name));

/** The last line may have been cut. */
function lineOf(line: string): readonly (readonly [string, Done])[] {
  try {
    return line === "" ? [] : [JSON.parse(line) as [string, Done]];
  } catch {
    return [];
  }
}
