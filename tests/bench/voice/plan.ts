/** What one run of the benchmark listens to: every phrase in every condition, and hours of sound that is no command. */
import { commandIds } from "../../../src/intent/phrases";
import { seededRandom } from "../../../src/rehearsal/random";
import { announcements } from "./announcements";
import { type Clip, everyPhrase } from "./clips";
import { babbleOf, machine, musicOf, type Noise } from "./noises";
import { testMusic, testPeople } from "./people";
import { type Kind, kinds, type Material, type Stretch, stretchSec } from "./stretches";
import { type TestVoice, testVoices } from "./voices";

export interface Condition {
  readonly name: string;
  readonly noise: "machine" | "babble" | "music" | null;
  readonly ratioDb: number;
}

export const phraseConditions: readonly Condition[] = [
  { name: "clean", noise: null, ratioDb: 0 },
  { name: "buzz 15 dB", noise: "machine", ratioDb: 15 },
  { name: "buzz 10 dB", noise: "machine", ratioDb: 10 },
  { name: "babble 10 dB", noise: "babble", ratioDb: 10 },
  { name: "music 10 dB", noise: "music", ratioDb: 10 },
];
export const accentConditions = phraseConditions.map((one) => ({ ...one, name: `accents, ${one.name}` }));
export const accidentConditions: readonly Condition[] = [
  { name: "accident clean", noise: null, ratioDb: 0 },
  { name: "accident buzz 10 dB", noise: "machine", ratioDb: 10 },
  { name: "accident buzz 5 dB", noise: "machine", ratioDb: 5 },
];

export type Job =
  | { readonly of: "clip"; readonly clip: Clip; readonly condition: Condition }
  | { readonly of: "stretch"; readonly stretch: Stretch };

export interface Wishes {
  /** Every command by every voice; else every fourth one, in turn. */
  readonly isFull: boolean;
  /** Of sound that is no command. */
  readonly hours: number;
}

/**
 * How much of the hours each kind gets. A neighbour and another station's announcements come on top: of 30 h, 10 h each,
 * for less without any action cannot show that they are at most 0.3 an hour.
 */
const shares: Readonly<Record<Kind, number>> = {
  people: 0.45,
  talk: 0.15,
  "near misses": 0.1,
  machine: 0.15,
  music: 0.15,
  neighbour: 0.34,
  announcements: 0.34,
};

export function jobsOf({ isFull, hours }: Wishes): readonly Job[] {
  const { voices, accents } = testVoices();
  const some = (of: readonly TestVoice[]) =>
    everyPhrase(of, commandIds, false).filter((_, n) => isFull || (n + Math.floor(n / commandIds.length)) % 4 === 0);
  const accidents = everyPhrase(voices, ["accident"], true);
  const clips = (of: readonly Clip[], conditions: readonly Condition[]): readonly Job[] =>
    conditions.flatMap((condition) => of.map((clip) => ({ of: "clip", clip, condition }) as const));
  const allKinds: readonly Kind[] = [...kinds, "neighbour", "announcements"];
  const stretches = allKinds.flatMap((kind) =>
    Array.from({ length: Math.max(1, Math.round((shares[kind] * hours * 3600) / stretchSec)) }, (_, n): Job => {
      return { of: "stretch", stretch: { kind, seed: n + 1 } };
    }),
  );
  const all = [
    ...clips(some(voices), phraseConditions),
    ...clips(some(accents), accentConditions),
    ...clips(accidents, accidentConditions),
    ...stretches,
  ];
  // In no order, so that a run that is cut short has heard something of everything.
  const random = seededRandom(9);
  return all
    .map((job) => ({ job, at: random() }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ job }) => job);
}

export interface Sounds {
  readonly material: Material;
  readonly noises: Readonly<Record<"machine" | "babble" | "music", Noise | null>>;
  /** What could not be had, and from where it comes. */
  readonly missing: readonly string[];
}

/** Everything that jobs are made of. People who only talk across one another are every third piece of the recordings. */
export function soundsAtHand(): Sounds {
  const voices = testVoices();
  const [people, songs] = [testPeople(), testMusic()];
  const pieces = people.found.flatMap(({ pieces }) => pieces);
  const tracks = songs.found.flatMap(({ pieces }) => pieces);
  const crowd = pieces.filter((_, n) => n % 3 === 0);
  const babble = crowd.length > 0 ? babbleOf(crowd) : null;
  const music = tracks.length > 0 ? musicOf(tracks) : null;
  return {
    material: {
      voices: voices.voices,
      people: pieces,
      announcements: announcements(),
      machine,
      music,
      babble: babble ?? machine,
    },
    noises: { machine, babble, music },
    missing: [...voices.missing, ...people.missing, ...songs.missing],
  };
}
