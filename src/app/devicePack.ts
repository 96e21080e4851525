/**
 * What this device needs to work without a network beyond the page itself: the phrase model, the voice's clips, the
 * recorded artist. Fetched when it is asked for, each file checked against its SHA-256 before it counts as there.
 */
import { z } from "zod";
import type { SpokenLanguage } from "../announcements/phrasebooks";
import type { DeviceState } from "../screen/model";
import { type Watched, watchedValue } from "./watchedValue";

export const PackFile = z.strictObject({
  path: z.string().regex(/^[a-zA-Z0-9][\w./-]*$/),
  bytes: z.number().int().min(0),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});
export type PackFile = z.infer<typeof PackFile>;
export const Pack = z.strictObject({ format: z.literal("gloveside-device-pack"), files: z.array(PackFile) });

/** The service worker answers from here. Named in vite.config.ts too. */
export const packCache = "gloveside-pack";
const hashHeader = "x-gloveside-sha256";

/** What belongs to one language; all else is for every language. The recorded artist speaks English. */
const inOneLanguage = [/^clips\/(\w+)\./, /^(?:own-)?voice\/(?:(\w+)\/)?\w+\.\w+$/, /^practice\//];

/** What is made for other languages is left out. */
export const neededFor = (language: SpokenLanguage, files: readonly PackFile[]): readonly PackFile[] =>
  files.filter(({ path }) =>
    inOneLanguage.every((pattern) => {
      const found = pattern.exec(path);
      return found === null || (found[1] ?? "en") === language;
    }),
  );

const bytesOf = (files: readonly PackFile[]): number => files.reduce((sum, { bytes }) => sum + bytes, 0);

export interface DevicePack {
  readonly state: Watched<DeviceState>;
  /** Looks anew at what is there for this language. What was there and is out of date is fetched again at once. */
  check(language: SpokenLanguage): Promise<void>;
  prepare(): Promise<void>;
}

/** @param base address of the app's folder, with its slash. */
export function devicePack(base: string): DevicePack {
  const state = watchedValue<DeviceState>({ at: "checking" });
  let missing: readonly PackFile[] = [];
  let isFetching = false;

  const check = async (language: SpokenLanguage): Promise<void> => {
    if (!("caches" in globalThis) || !("serviceWorker" in navigator)) return state.set({ at: "cannot" });
    try {
      const needed = neededFor(language, Pack.parse(await (await fetch(`${base}device-pack.json`)).json()).files);
      const cache = await caches.open(packCache);
      const kept = await Promise.all(
        needed.map(async ({ path }) => (await cache.match(base + path))?.headers.get(hashHeader) ?? null),
      );
      missing = needed.filter(({ sha256 }, at) => kept[at] !== sha256);
      const isOutOfDate = needed.some(({ sha256 }, at) => kept[at] !== null && kept[at] !== sha256);
      state.set(missing.length === 0 ? { at: "ready" } : { at: "bare", missingBytes: bytesOf(missing) });
      if (isOutOfDate) await prepare();
    } catch {
      state.set({ at: "cannot" });
    }
  };

  const prepare = async (): Promise<void> => {
    if (isFetching || missing.length === 0) return;
    isFetching = true;
    const allBytes = bytesOf(missing);
    let doneBytes = 0;
    state.set({ at: "fetching", doneBytes, allBytes });
    try {
      const cache = await caches.open(packCache);
      for (const file of missing) {
        const before = doneBytes;
        const told = (bytes: number) => state.set({ at: "fetching", doneBytes: before + bytes, allBytes });
        await keep(cache, base + file.path, file, told);
        doneBytes = before + file.bytes;
        missing = missing.filter((other) => other !== file);
      }
      state.set({ at: "ready" });
    } catch (trouble) {
      state.set({ at: "failed", why: whyOf(trouble), missingBytes: bytesOf(missing) });
    } finally {
      isFetching = false;
    }
  };

  return { state, check, prepare };
}

class Differs extends Error {}

async function keep(cache: Cache, url: string, file: PackFile, told: (bytes: number) => void): Promise<void> {
  const answer = await fetch(url, { cache: "no-cache", headers: { [hashHeader]: "fresh" } });
  if (!answer.ok || !answer.body) throw new Differs(`${file.path}: ${answer.status}`);
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let bytes = 0;
  for (const reader = answer.body.getReader(); ; ) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    bytes += value.length;
    told(Math.min(bytes, file.bytes));
  }
  const whole = await new Blob(parts).arrayBuffer();
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", whole));
  const sha256 = [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  if (sha256 !== file.sha256) throw new Differs(file.path);
  const type = answer.headers.get("content-type") ?? "application/octet-stream";
  await cache.put(url, new Response(whole, { headers: { "content-type": type, [hashHeader]: sha256 } }));
}

function whyOf(trouble: unknown): "offline" | "differs" | "noRoom" {
  if (trouble instanceof Differs) return "differs";
  return trouble instanceof DOMException && trouble.name === "QuotaExceededError" ? "noRoom" : "offline";
}
