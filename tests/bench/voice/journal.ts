/**
 * What a run has heard so far, line by line in out/bench/journal, so that a run that was cut short goes on where it stopped.
 * Bound to the model, to what was asked for and to the source of ear and benchmark: with another, it begins anew.
 */
import { createHash } from "node:crypto";
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { PhraseModel } from "../../../src/recogniser";
import type { Told } from "./perform";
import type { Wishes } from "./plan";

const folder = join("out", "bench", "journal");
const sources = ["src/recogniser", "src/intent", "tests/bench/voice", "audio/make/rehearsal"];

export interface Journal {
  readonly known: readonly Told[];
  write(told: Told): void;
}

export function openJournal({ digest, descriptionDigest }: PhraseModel, wishes: Wishes): Journal {
  const hash = createHash("sha256").update(JSON.stringify({ digest, descriptionDigest, wishes }));
  for (const source of sources) {
    const files = readdirSync(source, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));
    for (const name of files.sort()) hash.update(name).update(readFileSync(join(source, name)));
  }
  const path = join(folder, `${hash.digest("hex").slice(0, 24)}.jsonl`);
  mkdirSync(folder, { recursive: true });
  return {
    known: existsSync(path) ? readFileSync(path, "utf8").split("\n").flatMap(lineOf) : [],
    write: (told) => appendFileSync(path, `${JSON.stringify(told)}\n`),
  };
}

/** The last line may have been cut. */
function lineOf(line: string): readonly Told[] {
  try {
    return line === "" ? [] : [JSON.parse(line) as Told];
  } catch {
    return [];
  }
}
