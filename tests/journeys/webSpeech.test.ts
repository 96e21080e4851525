/**
 * The SpeechRecognition of our engine held against the Web Speech API, Draft Community Group Report (WebAudio CG), clause by
 * clause, in Chromium, which has one of its own, and in Firefox, which has none. Sound comes as a MediaStreamTrack; in
 * Firefox, which runs no audio context without a sound device, where there can be one (`support/soundDevice.ts`).
 */
import { cp, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serveEarPage } from "./support/earPage";
import { openFirefox } from "./support/firefox";
import { launchOptions } from "./support/place";
import { missingForSound, openSoundDevice } from "./support/soundDevice";
import { type Fired, installTrials, type Trials, type Wishes } from "./support/trials";

let folder = "";
let site: Awaited<ReturnType<typeof serveEarPage>>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "web-speech-"));
  site = await serveEarPage(folder);
  const recording = fileURLToPath(new URL("threePhrases.wav", import.meta.url));
  await cp(recording, join(folder, "site/said.wav"));
});
afterAll(async () => {
  await site.close();
  await rm(folder, { recursive: true });
});

/** As much of a page as both drivers have. */
interface DrivenPage {
  evaluate<T, A>(work: (given: A) => T | Promise<T>, given: A): Promise<T>;
  close(): Promise<void>;
}

async function inChromium(): Promise<DrivenPage> {
  const browser = await chromium.launch(launchOptions({ kind: "beeps" }));
  const page = await browser.newPage();
  await page.goto(site.origin);
  return { evaluate: (work, given) => page.evaluate(work as never, given) as never, close: () => browser.close() };
}

async function inFirefox(): Promise<DrivenPage> {
  const device = missingForSound === null ? await openSoundDevice() : null;
  const browser = await openFirefox(device);
  const page = await browser.newPage();
  await page.goto(site.origin);
  const close = async () => {
    await browser.close();
    await device?.close();
  };
  return { evaluate: (work, given) => page.evaluate(work as never, given) as never, close };
}

const finalsOf = (fired: readonly Fired[]) => fired.at(-1)?.results.filter(({ isFinal }) => isFinal) ?? [];
const typesOf = (fired: readonly Fired[]) => fired.map(({ type }) => type);
const resultsOf = (fired: readonly Fired[]) => fired.filter(({ type }) => type === "result");

describe.each([
  ["Chromium", inChromium, true, true],
  ["Firefox", inFirefox, false, missingForSound === null],
] as const)("in %s", (_, open, hasItsOwn, hasSound) => {
  let page: DrivenPage;
  const run = (wishes: Wishes): Promise<readonly Fired[]> =>
    page.evaluate((given) => (globalThis as unknown as { trials: Trials }).trials.run(given), wishes);

  beforeAll(async () => {
    page = await open();
    await page.evaluate(installTrials as (given: null) => void, null);
  });
  afterAll(() => page?.close());

  describe("installing it", () => {
    it("takes the standard name where the browser has none, and stands beside a native one", async () => {
      const found = await page.evaluate(() => {
        const all = globalThis as unknown as Record<string, unknown>;
        const isNative = String(all.SpeechRecognition).includes("[native code]");
        return { isNative, hasOurs: typeof all.OwnSpeechRecognition, name: typeof all.SpeechRecognition };
      }, null);
      expect(found).toEqual({ isNative: hasItsOwn, hasOurs: "function", name: "function" });
    });
  });

  describe("availability and install", () => {
    const ask = (langs: readonly string[], processLocally: boolean) =>
      page.evaluate(
        ([tags, isLocal]) => {
          const { OwnSpeechRecognition: own } = globalThis as unknown as {
            OwnSpeechRecognition: { available(options: object): Promise<string> };
          };
          return own.available({ langs: tags, processLocally: isLocal }).catch((error: DOMException) => error.name);
        },
        [langs, processLocally] as const,
      );
    const install = (langs: readonly string[]) =>
      page.evaluate((tags) => {
        const { OwnSpeechRecognition: own } = globalThis as unknown as {
          OwnSpeechRecognition: { install(options: object): Promise<boolean> };
        };
        return own.install({ langs: tags }).catch((error: DOMException) => error.name);
      }, langs);

    it("is unavailable for no language at all, and for one that is not supported", async () => {
      expect([
        await ask([], true),
        await ask([], false),
        await ask(["fr"], true),
        await ask(["en", "fr"], false),
      ]).toEqual(Array(4).fill("unavailable"));
    });

    it("is downloadable before it is installed and available after; the worst of several counts", async () => {
      expect(await ask(["en-GB"], true)).toBe("downloadable");
      expect(await install(["en-GB"])).toBe(true);
      expect(await ask(["en-GB"], true)).toBe("available");
      expect(await ask(["en-GB", "es"], true)).toBe("downloadable");
      expect(await ask(["en-GB", "es"], false)).toBe("available");
    });

    it("install is false for no language and for one that is not supported", async () => {
      expect([await install([]), await install(["fr"]), await install(["en", "fr"])]).toEqual([false, false, false]);
    });

    it("a tag that is not BCP 47 is a SyntaxError in both", async () => {
      expect([await ask(["not a tag"], true), await install(["not a tag"])]).toEqual(["SyntaxError", "SyntaxError"]);
    });
  });

  describe.runIf(hasSound)("a session on a track", () => {
    it("that is not continuous gives one final result and ends", async () => {
      const fired = await run({ processLocally: true });
      expect(resultsOf(fired).map(({ results }) => results.map(({ isFinal }) => isFinal))).toEqual([[true]]);
      expect(fired.find(({ type }) => type === "result")?.results[0]?.transcript).toBe("station previous step");
      expect(typesOf(fired).at(-1)).toBe("end");
    });

    it("that is continuous gives result after result; finals are never changed, and join into one transcript", async () => {
      const fired = await run({ continuous: true, stopAfter: 3 });
      const results = resultsOf(fired);
      expect(results.map(({ resultIndex }) => resultIndex)).toEqual([0, 1, 2]);
      const last = finalsOf(results);
      expect(
        results.filter(({ results: then }) => then.some((each, n) => each.transcript !== last[n]?.transcript)),
      ).toEqual([]);
      expect(last.map(({ transcript }) => transcript).join("")).toBe(
        "station previous step station accident alarm station how many minutes",
      );
      expect(last.filter(({ confidence }) => confidence < 0 || confidence > 1)).toEqual([]);
    });

    it("keeps the order that is promised, and its events neither bubble nor can be cancelled", async () => {
      const fired = typesOf(await run({ continuous: true, stopAfter: 3 }));
      const isBefore = (a: string, b: string) =>
        !fired.includes(b) || (fired.includes(a) && fired.indexOf(a) < fired.indexOf(b));
      const promised = [
        ...["soundstart", "speechstart", "audioend", "result", "nomatch"].map((later) => ["audiostart", later]),
        ["speechstart", "speechend"],
        ["soundstart", "soundend"],
      ];
      expect(promised.filter(([a = "", b = ""]) => !isBefore(a, b))).toEqual([]);
      expect(fired).toEqual(expect.arrayContaining(["start", "audiostart", "soundstart", "speechstart", "audioend"]));
      expect(fired.at(-1)).toBe("end");
      expect((await run({})).filter(({ canBeStopped }) => canBeStopped)).toEqual([]);
    });

    it("shows interim results only when they are wanted: after the finals, overwritten by the next", async () => {
      const fired = await run({ continuous: true, interimResults: true, stopAfter: 3 });
      const lists = resultsOf(fired).map(({ results }) => results.map(({ isFinal }) => isFinal));
      expect(lists.some((list) => list.includes(false))).toBe(true);
      expect(lists.filter((list) => list.slice(list.indexOf(false)).includes(true) && list.includes(false))).toEqual(
        [],
      );
      const results = resultsOf(fired);
      const changedBelow = results.filter(({ resultIndex, results: now }, n) => {
        const before = results[n - 1]?.results ?? [];
        const same = (at: number) => JSON.stringify(before[at]) === JSON.stringify(now[at]);
        return Array.from({ length: resultIndex ?? 0 }, (_each, at) => at).some((at) => !same(at));
      });
      expect(changedBelow).toEqual([]);
      expect(results.filter(({ resultIndex, results: now }) => now.length < (resultIndex ?? 0))).toEqual([]);
    });

    it("that is aborted gives no result any more, only its end", async () => {
      const fired = typesOf(await run({ continuous: true, on: { speechstart: "abort" } }));
      expect(fired.slice(fired.indexOf("speechstart"))).not.toContain("result");
      expect(fired).not.toContain("error");
      expect(fired.at(-1)).toBe("end");
    });

    it("that is stopped hears no more and answers for what it had heard, then ends", async () => {
      const fired = typesOf(await run({ continuous: true, on: { result: "stop" } }));
      expect(fired.filter((type) => type === "result")).toHaveLength(1);
      expect(fired.at(-1)).toBe("end");
    });

    it("in which one answer is wanted and nothing is said is a no-speech error, then ends", async () => {
      const fired = await run({ silenceSec: 10 });
      expect(fired.flatMap(({ error }) => error ?? [])).toEqual(["no-speech"]);
      expect(typesOf(fired).at(-1)).toBe("end");
    });
  });

  describe("errors of starting", () => {
    it("may be begun in the error event of the last", async () => {
      const fired = await run({ lang: "fr-FR", on: { error: "startAgain" } });
      expect(fired.map(({ type, error }) => error ?? type).slice(0, 2)).toEqual(["language-not-supported", "end"]);
    });

    it("a track that is not audio, or not live, is an InvalidStateError", async () => {
      const names = await page.evaluate(() => {
        const { trials } = globalThis as unknown as { trials: Trials };
        const start = (track: MediaStreamTrack) =>
          trials.thrownBy(() => (trials.make().start as (track: MediaStreamTrack) => void).call(trials.make(), track));
        const canvas = document.createElement("canvas");
        canvas.getContext("2d");
        const film = canvas.captureStream().getVideoTracks()[0] as MediaStreamTrack;
        const ended = trials.silentTrack();
        ended.stop();
        return [start(film), start(ended)];
      }, null);
      expect(names).toEqual(["InvalidStateError", "InvalidStateError"]);
    });

    it("starting what has started is an InvalidStateError; stopping what has not is passed over", async () => {
      const names = await page.evaluate(() => {
        const { trials } = globalThis as unknown as { trials: Trials };
        const recognition = trials.make() as unknown as {
          lang: string;
          start(track: MediaStreamTrack): void;
          stop(): void;
          abort(): void;
        };
        recognition.lang = "en";
        const early = [trials.thrownBy(() => recognition.stop()), trials.thrownBy(() => recognition.abort())];
        const [first, second] = [trials.silentTrack(), trials.silentTrack()];
        const started = [
          trials.thrownBy(() => recognition.start(first)),
          trials.thrownBy(() => recognition.start(second)),
        ];
        recognition.abort();
        return [...early, ...started, trials.thrownBy(() => recognition.abort())];
      }, null);
      expect(names).toEqual([null, null, null, "InvalidStateError", null]);
    });

    it("processLocally that cannot be met is service-not-allowed, and nothing has started", async () => {
      const fired = await run({ lang: "fr-FR", processLocally: true, until: "error" });
      expect(fired.map(({ type, error }) => [type, error])).toEqual([["error", "service-not-allowed"]]);
    });

    it("a language that is not supported is an error, then the end", async () => {
      const fired = await run({ lang: "fr-FR" });
      expect(fired.map(({ type, error }) => [type, error])).toEqual([
        ["error", "language-not-supported"],
        ["end", null],
      ]);
    });
  });

  describe("its attributes and small objects", () => {
    it("have the draft's first values", async () => {
      const values = await page.evaluate(() => {
        const { trials } = globalThis as unknown as { trials: Trials };
        const { lang, continuous, interimResults, maxAlternatives, processLocally, onresult } = trials.make();
        return [lang, continuous, interimResults, maxAlternatives, processLocally, onresult];
      }, null);
      expect(values).toEqual(["", false, false, 1, false, null]);
    });

    it("phrases for biasing are refused with phrases-not-supported, none are taken", async () => {
      const told = await page.evaluate(() => {
        const { trials } = globalThis as unknown as { trials: Trials };
        const recognition = trials.make();
        recognition.phrases = { length: 0 };
        try {
          recognition.phrases = { length: 1 };
          return "taken";
        } catch (error) {
          return (error as { error?: string }).error ?? String(error);
        }
      }, null);
      expect(told).toBe("phrases-not-supported");
    });
  });
});
