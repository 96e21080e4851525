/** PocketSphinx on some of the same jobs, drawn by seed: per condition what it heard right, wrong, and acted on in vain. */
import { join } from "node:path";
import { commands } from "../../../src/intent/phrases";
import { heardRight, isWrong, type Outcome } from "../../../src/recogniser/figures/outcome";
import { seededRandom } from "../../../src/rehearsal/random";
import { allowedFor } from "./clips";
import { soundFor } from "./perform";
import type { Job, Sounds } from "./plan";
import { hasPocketSphinx, pocketSphinxHears, pocketSphinxIn } from "./pocketSphinx";
import { addressIn, setIn, stretchSec } from "./stretches";

export interface Beside {
  /** By the name of a condition or kind. */
  readonly cells: ReadonlyMap<string, string>;
  /** Another phrase than was said, all conditions together. */
  readonly wrong: string | undefined;
  readonly missing: readonly string[];
}

const folder = join("out", "bench", "pocketsphinx");

export function sphinxBeside(jobs: readonly Job[], sounds: Sounds, clipsEach: number, stretchesEach: number): Beside {
  if (!hasPocketSphinx())
    return {
      cells: new Map(),
      wrong: undefined,
      missing: ["PocketSphinx (apt-get install pocketsphinx pocketsphinx-en-us)"],
    };
  const random = seededRandom(77);
  const drawn = jobs.map((job) => ({ job, at: random() })).toSorted((a, b) => a.at - b.at);
  const some = [...new Set(jobs.map(nameOf))].flatMap((name) => {
    const mine = drawn.filter(({ job }) => nameOf(job) === name).map(({ job }) => job);
    return mine.slice(0, mine[0]?.of === "clip" ? clipsEach : stretchesEach);
  });
  const clips = clipOutcomes(some, sounds);
  const stretches = some.flatMap((job) => actionsIn(job, sounds));
  const cells = new Map<string, string>();
  for (const name of new Set(clips.map(({ condition }) => condition))) {
    const mine = clips.filter(({ condition }) => condition === name);
    cells.set(name, `${heardRight("", mine, null).value.toFixed(1)} % of ${mine.length}`);
  }
  for (const name of new Set(stretches.map(({ kind }) => kind))) {
    const mine = stretches.filter(({ kind }) => kind === name);
    const hours = (mine.length * stretchSec) / 3600;
    const rate = mine.reduce((sum, { actions }) => sum + actions, 0) / hours;
    cells.set(name, `${rate.toFixed(0)}/h in ${hours.toFixed(2)} h`);
  }
  const wrong = clips.filter(isWrong).length;
  return {
    cells,
    wrong: `${((100 * wrong) / Math.max(1, clips.length)).toFixed(1)} % of ${clips.length}`,
    missing: [],
  };
}

const nameOf = (job: Job): string => (job.of === "clip" ? job.condition.name : job.stretch.kind);

/** Clips with the same grammar go through the program together: loading its model takes longer than a clip. */
function clipOutcomes(jobs: readonly Job[], sounds: Sounds): readonly Outcome[] {
  const heard = jobs.flatMap((job) => {
    const sound = job.of === "clip" ? soundFor(job, sounds) : null;
    if (job.of !== "clip" || sound === null) return [];
    const allowed = allowedFor(job.clip);
    return [{ job, sound, allowed, phrases: allowed.map((id) => `${job.clip.address} ${commands[id]}`) }];
  });
  return [...new Set(heard.map(({ phrases }) => phrases.join()))].flatMap((grammar) => {
    const mine = heard.filter(({ phrases }) => phrases.join() === grammar);
    const found = pocketSphinxHears(
      mine.map(({ sound }) => sound),
      mine[0]?.phrases ?? [],
      folder,
    );
    return mine.map(({ job: { clip, condition }, allowed }, n): Outcome => {
      const command = allowed[found[n] ?? -1];
      const acted = command === undefined ? [] : [command];
      const { speaker } = clip.voice;
      return { condition: condition.name, speaker, said: clip.command, acted, asked: 0, soundMs: 0 };
    });
  });
}

function actionsIn(job: Job, sounds: Sounds): readonly { readonly kind: string; readonly actions: number }[] {
  const sound = job.of === "stretch" ? soundFor(job, sounds) : null;
  if (job.of !== "stretch" || sound === null) return [];
  const { stretch } = job;
  const phrases = setIn(stretch).map((id) => `${addressIn(stretch)} ${commands[id]}`);
  return [{ kind: stretch.kind, actions: pocketSphinxIn(sound, phrases, folder) }];
}
