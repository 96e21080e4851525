import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { seededRandom } from "../../rehearsal/random";
import type { Head } from "../network/weightsOf";
import { Joint, type Outputs } from "./joint";
import { type Example, tuneHead } from "./tuneHead";

const outputs: Outputs = { addresses: 2, commands: 3 };
const inputs = 6;
const random = seededRandom(3);
const numbers = (length: number, size = 1) => Float32Array.from({ length }, () => size * (random() - 0.5));
const head: Head = { weights: numbers(6 * inputs), bias: numbers(6) };
const anySummary = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: inputs, maxLength: inputs });

describe("the probabilities of a head", () => {
  property.prop([anySummary])("of every phrase and of none add up to one", (summary) => {
    const joint = new Joint(head, outputs);
    joint.see(Float32Array.from(summary));
    const all = [0, 1].flatMap((a) => [0, 1, 2].map((c) => joint.p(a, c)));
    expect(all.reduce((sum, p) => sum + p, joint.none)).toBeCloseTo(1, 9);
  });

  property.prop([anySummary, fc.constantFrom(null, { address: 0, command: 2 }, { address: 1, command: 0 })])(
    "move with each output as the difference quotient says",
    (given, target) => {
      const summary = Float32Array.from(given);
      const slopes = new Float64Array(6);
      const lossWith = (bias: Float32Array) => {
        const joint = new Joint({ weights: head.weights, bias }, outputs);
        joint.see(summary);
        return joint.slopes(target, new Float64Array(6));
      };
      const joint = new Joint(head, outputs);
      joint.see(summary);
      joint.slopes(target, slopes);
      for (let o = 0; o < 6; o++) {
        const h = 2 ** -7;
        const moved = (by: number) => head.bias.map((x, n) => (n === o ? x + by : x));
        const quotient = (lossWith(moved(h)) - lossWith(moved(-h))) / (2 * h);
        expect(slopes[o]).toBeCloseTo(quotient, 3);
      }
    },
  );
});

describe("a head tuned to examples", () => {
  const around = (centre: Float32Array) => centre.map((x) => x + 0.1 * (random() - 0.5));
  const centres = [numbers(inputs, 2), numbers(inputs, 2), numbers(inputs, 2)] as const;
  const target = { address: 1, command: 2 };
  const examples: readonly Example[] = Array.from({ length: 900 }, (_, n) => ({
    summary: around(centres[n % 3] as Float32Array),
    target: n % 3 === 0 ? target : null,
  }));
  const tuned = tuneHead(head, outputs, examples);
  const sure = (which: Head, summary: Float32Array) => {
    const joint = new Joint(which, outputs);
    joint.see(summary);
    return joint.p(target.address, target.command);
  };

  test("tells the phrase it was shown from what was shown as nothing far better than before", () => {
    const apart = (which: Head) => sure(which, centres[0]) - Math.max(sure(which, centres[1]), sure(which, centres[2]));
    expect(sure(tuned, centres[0])).toBeGreaterThan(sure(head, centres[0]) + 0.1);
    expect(apart(tuned)).toBeGreaterThan(apart(head) + 0.1);
  });

  test("is the same each time, and leaves the head that it came from alone", () => {
    const before = Float32Array.from(head.weights);
    expect(tuneHead(head, outputs, examples)).toEqual(tuned);
    expect(head.weights).toEqual(before);
  });
});
