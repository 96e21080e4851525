import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { commandIds } from "../../intent/phrases";
import type { PhraseModel } from "../network/loadModel";
import { shippedModel } from "../network/shippedModel";
import { readWav } from "../sound/wav";
import { earHere } from "./earHere";
import type { EarReport } from "./port";
import { settled } from "./scripted";
import { EarService } from "./service";

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
/** The shipped model, hearing a phrase from this score on. */
const hearingFrom = (threshold: number): PhraseModel => ({
  ...model,
  file: {
    ...model.file,
    decision: {
      smoothingHops: 2,
      refractoryHops: 4,
      thresholds: Object.fromEntries(commandIds.map((id) => [id, threshold])),
    },
  },
});
/** Something is always heard. */
const credulous = hearingFrom(1e-9);
const file = readWav(readFileSync(new URL("../../../audio/make/golden/utterance.wav", import.meta.url)));
const sound = file.ok ? file.sound.samples : new Float32Array();
const open = {
  type: "open",
  run: 7,
  address: "station",
  rateHz: 16_000,
  permitted: commandIds,
  refusable: [],
} as const;

function serviceAt(nowMs: () => number) {
  const reports: EarReport[] = [];
  return { reports, service: new EarService(credulous, (report) => reports.push(report), nowMs) };
}

describe("an ear that takes orders", () => {
  test("reports what it hears under the run that it was opened for, and that it has finished", () => {
    const { reports, service } = serviceAt(() => 0);
    service.take(open);
    service.take({ type: "sound", samples: sound, sentAtMs: 0 });
    service.take({ type: "finish" });
    expect(reports.filter((report) => report.type === "heard").length).toBeGreaterThan(5);
    expect(reports.every((report) => "run" in report && report.run === 7)).toBe(true);
    expect(reports.at(-1)?.type).toBe("finished");
  });

  test("reports what is still being heard where that is wanted, each change once", () => {
    const rising = (interim: boolean) => {
      const reports: EarReport[] = [];
      const service = new EarService(
        hearingFrom(1),
        (report) => reports.push(report),
        () => 0,
      );
      service.take({ ...open, interim });
      for (let at = 0; at < sound.length; at += 1280)
        service.take({ type: "sound", samples: sound.slice(at, at + 1280), sentAtMs: 0 });
      return reports.flatMap((report) => (report.type === "rising" ? [report.rising?.command ?? null] : []));
    };
    expect(rising(false)).toEqual([]);
    const shown = rising(true);
    expect(shown.filter((command) => command !== null).length).toBeGreaterThan(0);
    expect(shown.filter((command, n) => command === shown[n - 1])).toEqual([]);
  });

  test("passes over sound that comes before it is opened and after it has finished", () => {
    const { reports, service } = serviceAt(() => 0);
    service.take({ type: "sound", samples: sound, sentAtMs: 0 });
    service.take(open);
    service.take({ type: "finish" });
    const count = reports.length;
    service.take({ type: "sound", samples: sound, sentAtMs: 0 });
    expect(reports.length).toBe(count);
  });

  test("hears only what is allowed from now on", () => {
    const { reports, service } = serviceAt(() => 0);
    service.take({ ...open, permitted: [] });
    service.take({ type: "sound", samples: sound.slice(0, 16_000), sentAtMs: 0 });
    expect(reports).toEqual([]);
  });

  test("asks about what is farther away than the artist, in this run and the next, until it is told otherwise", () => {
    const { reports, service } = serviceAt(() => 0);
    const firstHeard = (run: number) => {
      service.take({ ...open, run });
      service.take({ type: "sound", samples: sound, sentAtMs: 0 });
      service.take({ type: "finish" });
      return reports.find((one) => one.type === "heard" && one.run === run);
    };
    service.take({ type: "artist", speechDb: 0 });
    expect(firstHeard(1)).toMatchObject({ heard: { kind: "unsure" } });
    expect(firstHeard(2)).toMatchObject({ heard: { kind: "unsure" } });
    service.take({ type: "artist", speechDb: null });
    expect(firstHeard(3)).toMatchObject({ heard: { kind: "understood" } });
  });

  test("says when it cannot keep up, at most every five seconds", () => {
    let nowMs = 0;
    const { reports, service } = serviceAt(() => nowMs);
    service.take({ ...open, permitted: [] });
    for (nowMs = 1000; nowMs <= 8000; nowMs += 1000) {
      service.take({ type: "sound", samples: new Float32Array(160), sentAtMs: nowMs - 900 });
    }
    expect(reports).toEqual(Array(2).fill({ type: "behind", run: 7, behindMs: 900 }));
  });
});

describe("an ear in the same thread", () => {
  test("says that it is ready, and keeps orders that came too early", async () => {
    const ear = earHere(Promise.resolve({ ok: true, model: credulous }));
    const reports: EarReport[] = [];
    ear.onReport((report) => reports.push(report));
    ear.tell(open);
    ear.tell({ type: "sound", samples: sound, sentAtMs: Number.MAX_SAFE_INTEGER });
    await settled();
    expect(reports[0]).toMatchObject({ type: "ready", digest: loaded.model.digest });
    expect(reports.some((report) => report.type === "heard")).toBe(true);
  });

  test("says why a model cannot be used", async () => {
    const ear = earHere(Promise.resolve({ ok: false, code: "wrong-digest", message: "changed" }));
    const reports: EarReport[] = [];
    ear.onReport((report) => reports.push(report));
    await settled();
    expect(reports).toEqual([{ type: "unusable", code: "wrong-digest", message: "changed" }]);
  });
});
