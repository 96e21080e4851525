/**
 * What teaching it one's voice is worth: for each held-out voice, three takes of every phrase are learnt, then other takes
 * (spoken slower and quicker than any that was taught, over a machine made another way) are heard before and after, with 8
 * phrases allowed. Beside it: false actions by other voices' talk, before and after. `npm run bench:enrol`; with the name of
 * a file at the end, the row of `npm run bench:voice` is written there.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { buzz } from "../../../audio/make/rehearsal/buzz";
import { ClipManifest } from "../../../src/announcements/clips";
import { type CommandId, commandIds } from "../../../src/intent/phrases";
import { Decision } from "../../../src/recogniser/decision/decision";
import { settingsOf } from "../../../src/recogniser/decision/settings";
import { type Figure, least } from "../../../src/recogniser/figures/figure";
import { bootstrapped, poissonUpper } from "../../../src/recogniser/figures/intervals";
import { PhraseNet } from "../../../src/recogniser/network/phraseNet";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { type Head, headOf } from "../../../src/recogniser/network/weightsOf";
import { Joint } from "../../../src/recogniser/ownVoice/joint";
import {
  addressAt,
  commandAt,
  learnVoice,
  type OwnHead,
  outputsOf,
  type Take,
  teachable,
} from "../../../src/recogniser/ownVoice/learn";
import { lessonOf, type SaidPhrase } from "../../../src/recogniser/ownVoice/lesson";
import { readNegatives } from "../../../src/recogniser/ownVoice/negativesFile";
import { type Moment, momentsOf } from "../../../src/recogniser/ownVoice/summaries";
import { seededRandom } from "../../../src/rehearsal/random";
import { heldOutVoices, phraseOf, rmsOf, said, type Voice } from "./heldOut";

const rateHz = 16_000;
const voices = heldOutVoices.slice(0, Number(process.argv[2] ?? 6));
const sentencesHeard = Number(process.argv[3] ?? 120);
const rowFile = process.argv[4];
const taughtSpeeds = [0.92, 1, 1.1];
const testSpeeds = [0.86, 1.05];

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
const negatives = readNegatives(
  readFileSync("public/own-voice/negatives.json", "utf8"),
  readFileSync("public/own-voice/negatives.bin"),
  model.digest,
);
if (negatives === null) throw new Error("public/own-voice is of another model: npm run negatives");
const net = new PhraseNet(model);
const known = teachable(model);
const machine = buzz(rateHz, 31, { hertz: 97, passSec: [900, 901], restSec: [1, 1] });

function overBuzz(sound: Float32Array, ratioDb: number): Float32Array {
  const noise = machine.take(sound.length);
  const gain = (rmsOf(sound) / rmsOf(noise)) * 10 ** (-ratioDb / 20);
  return sound.map((x, n) => x + gain * (noise[n] as number));
}
const padded = (sound: Float32Array): Float32Array => {
  const longer = new Float32Array(sound.length + 0.6 * rateHz);
  longer.set(sound, 0.3 * rateHz);
  return longer;
};

const random = seededRandom(41);
const openSets = new Map(
  known.map((command) => {
    const others = known.filter((id) => id !== command).toSorted(() => random() - 0.5);
    return [command, [command, ...others.slice(0, 7)]] as const;
  }),
);

/** What the decision makes of these moments with this head. */
function decided(
  moments: readonly Moment[],
  head: Head,
  thresholds: OwnHead["thresholds"],
  allowed: readonly CommandId[],
) {
  const usual = settingsOf(model.file.decision);
  const decision = new Decision("station", { ...usual, thresholds: { ...usual.thresholds, ...thresholds } });
  decision.allow(allowed);
  const joint = new Joint(head, outputsOf(model));
  const own = addressAt(model, "station");
  return moments.flatMap(({ atMs, summary }) => {
    joint.see(summary);
    const heard = decision.step(
      atMs,
      commandIds.map((id) => (commandAt(model, id) < 0 ? 0 : joint.p(own, commandAt(model, id)))),
    );
    return heard?.kind === "understood" ? [heard.command] : [];
  });
}

/** Every phrase three times, each take with what it teaches beside itself. */
function taught(voice: Voice): { readonly takes: readonly Take[]; readonly crossings: readonly Float32Array[] } {
  const said: SaidPhrase[] = [];
  const lessons = known.flatMap((command) =>
    taughtSpeeds.map((speed) => {
      const sound = phraseOf(voice, "station", command, speed);
      const one = { command, sound: padded(sound), startMs: 300, endMs: 300 + (1000 * sound.length) / rateHz };
      const lesson = lessonOf(model, net, "station", one, said, said.length);
      said.push(one);
      return { clean: { ...one, moments: momentsOf(net, one.sound) }, ...lesson };
    }),
  );
  return {
    takes: lessons.flatMap(({ clean, noisy, paced }) => [clean, noisy, paced]),
    crossings: lessons.flatMap(({ crossings }) => crossings),
  };
}

const manifest = ClipManifest.parse(JSON.parse(readFileSync("public/clips/en.json", "utf8")));
const texts = Object.keys(manifest.clips)
  .filter((text) => text.split(" ").length > 4)
  .filter((_, n, all) => n % Math.ceil(all.length / sentencesHeard) === 0);
const talk = texts.map((text, n) => momentsOf(net, padded(said(heldOutVoices[n % 2 === 0 ? 7 : 6] as never, text, 1))));
const talkHours = (talk.reduce((sum, moments) => sum + moments.length, 0) * 0.08) / 3600;

/** One voice before or after, as soon as it is known: a run that is broken off has said something. */
const told = ({
  when,
  byCondition,
  falseActions,
}: {
  when: string;
  byCondition: readonly (readonly { right: number }[])[];
  falseActions: number;
}) =>
  `${when} ${byCondition.map((tests, c) => `${conditions[c]?.[0]} ${((100 * tests.reduce((sum, { right }) => sum + right, 0)) / tests.length).toFixed(1)}`).join(", ")}, ${falseActions} false`;

const usual: OwnHead = { head: headOf(model), thresholds: {} };
const conditions = [
  ["clean", null],
  ["buzz 10 dB", 10],
  ["buzz 5 dB", 5],
] as const;
const results = voices.map((voice) => {
  const began = performance.now();
  const { takes, crossings } = taught(voice);
  const heardMs = performance.now() - began;
  const learning = performance.now();
  const own = learnVoice(model, "station", takes, crossings, negatives);
  const learnMs = performance.now() - learning;
  const tests = known.flatMap((command) =>
    testSpeeds.flatMap((speed) =>
      conditions.map(([name, ratio]) => {
        const sound = padded(phraseOf(voice, "station", command, speed));
        return { name, command, moments: momentsOf(net, ratio === null ? sound : overBuzz(sound, ratio)) };
      }),
    ),
  );
  const shares = (
    [
      ["before", usual],
      ["after", own],
    ] as const
  ).map(([when, which]) => ({
    when,
    byCondition: conditions.map(([name]) =>
      tests
        .filter((test) => test.name === name)
        .map(({ command, moments }) => {
          const heard = decided(moments, which.head, which.thresholds, openSets.get(command) ?? []);
          return {
            right: heard.includes(command) && heard.every((one) => one === command) ? 1 : 0,
            wrong: heard.some((one) => one !== command) ? 1 : 0,
          };
        }),
    ),
    falseActions: talk.flatMap((moments) => decided(moments, which.head, which.thresholds, known)).length,
  }));
  console.log(
    `${voice.name}: ${takes.length / 3} takes, heard in ${(heardMs / 1000).toFixed(0)} s while they were given, learnt in ${(learnMs / 1000).toFixed(1)} s; ${shares.map(told).join("; ")}`,
  );
  return shares;
});

console.log("\n| | clean | buzz 10 dB | buzz 5 dB | wrong | false actions, all phrases open |");
console.log("|---|---|---|---|---|---|");
for (const [n, when] of ["before", "after"].entries()) {
  const cells = conditions.map((_, c) => {
    const [mean, low, high] = bootstrapped(results.map((of) => of[n]?.byCondition[c]?.map(({ right }) => right) ?? []));
    return `${(100 * mean).toFixed(1)} (${(100 * low).toFixed(1)}–${(100 * high).toFixed(1)})`;
  });
  const all = results.flatMap((of) => of[n]?.byCondition.flat() ?? []);
  const wrong = all.reduce((sum, one) => sum + one.wrong, 0);
  const falseActions = results.reduce((sum, of) => sum + (of[n]?.falseActions ?? 0), 0);
  const hours = talkHours * results.length;
  console.log(
    `| ${when} | ${cells.join(" | ")} | ${wrong} of ${all.length} | ${falseActions} in ${hours.toFixed(2)} h, ≤ ${(poissonUpper(falseActions) / hours).toFixed(1)}/h |`,
  );
}
for (const [v, voice] of voices.entries()) {
  const share = (n: number) => {
    const own = results[v]?.[n]?.byCondition[1] ?? [];
    return (100 * own.reduce((sum, { right }) => sum + right, 0)) / own.length;
  };
  console.log(`${voice.name}, buzz 10 dB: ${share(0).toFixed(1)} → ${share(1).toFixed(1)}`);
}
if (rowFile !== undefined) {
  const rights = results.map((of) => of[1]?.byCondition[1]?.map(({ right }) => right) ?? []);
  const [mean, low, high] = bootstrapped(rights);
  const row: Figure = {
    what: "after teaching it one's voice, buzz 10 dB",
    of: `${rights.flat().length} clips, ${voices.length} speakers`,
    ...{ value: 100 * mean, low: 100 * low, high: 100 * high },
    ...{ unit: "%", bar: least(98), beside: null },
  };
  writeFileSync(rowFile, JSON.stringify([row]));
}
