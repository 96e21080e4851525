/**
 * The camera that reads codes held up to it. Opened only while a pack is being taken up; pictures stay in the memory of
 * this page and are forgotten at once. Nothing is decided here.
 */
import type { Seen } from "./packCode";

export type CameraCondition = "off" | "asking" | "on" | "denied" | "none" | "lost" | "noReader";

export interface CodeCamera {
  readonly condition: CameraCondition;
  /** To be shown, so that the hand finds the place; null while closed. */
  readonly stream: MediaStream | null;
  subscribe(listen: () => void): () => void;
  /** @param seen called for each picture, also with no code in it; of the same clock as `performance.now()`. */
  open(seen: (codes: readonly Seen[], atMs: number) => void): void;
  close(): void;
}

type FromReader = { readonly ok: true; readonly codes: readonly Seen[] } | { readonly ok: false };

/** Five pictures a second: quick enough for a hand, and the rest of the time is the ear's. */
const everyMs = 200;

export function codeCamera(): CodeCamera {
  const listeners = new Set<() => void>();
  let now: { condition: CameraCondition; stream: MediaStream | null } = { condition: "off", stream: null };
  let reader: Worker | null = null;
  /** Each opening has its own; what an older one still has in hand is dropped. */
  let turn = 0;

  const become = (condition: CameraCondition, stream: MediaStream | null = null): void => {
    if (now.condition === condition && now.stream === stream) return;
    now = { condition, stream };
    for (const listen of [...listeners]) listen();
  };
  const stop = (): void => {
    turn += 1;
    for (const track of now.stream?.getTracks() ?? []) track.stop();
  };

  const run = async (mine: number, seen: (codes: readonly Seen[], atMs: number) => void): Promise<void> => {
    const stream = await ask();
    if (typeof stream === "string") return mine === turn ? become(stream) : undefined;
    if (mine !== turn) return stream.getTracks().forEach((track) => void track.stop());
    stream.getVideoTracks()[0]?.addEventListener("ended", () => mine === turn && become("lost"));
    become("on", stream);
    const film = document.createElement("video");
    Object.assign(film, { srcObject: stream, muted: true, playsInline: true });
    await film.play().catch(() => undefined);
    reader ??= new Worker(new URL("./reader.worker.ts", import.meta.url), { type: "module", name: "codes" });
    while (mine === turn && now.condition === "on") {
      const startMs = performance.now();
      const codes = await codesIn(reader, film);
      if (mine !== turn) return;
      if (codes === null) return become("noReader");
      seen(codes, startMs);
      await new Promise((wait) => setTimeout(wait, Math.max(30, everyMs - (performance.now() - startMs))));
    }
  };

  return {
    get condition() {
      return now.condition;
    },
    get stream() {
      return now.stream;
    },
    subscribe(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    open(seen) {
      stop();
      become("asking");
      void run(turn, seen);
    },
    close() {
      stop();
      become("off");
    },
  };
}

async function ask(): Promise<MediaStream | "denied" | "none"> {
  const video = { facingMode: "environment", width: { ideal: 1280 }, height: { ideal: 720 } };
  try {
    return await navigator.mediaDevices.getUserMedia({ video });
  } catch (error) {
    return (error as Error)?.name === "NotAllowedError" ? "denied" : "none";
  }
}

/** @returns null where the reader does not run. */
async function codesIn(reader: Worker, film: HTMLVideoElement): Promise<readonly Seen[] | null> {
  if (film.readyState < HTMLMediaElement.HAVE_CURRENT_DATA) return [];
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(film);
  } catch {
    // Between two pictures, or the camera is just going.
    return [];
  }
  return new Promise((answered) => {
    reader.onerror = () => answered(null);
    reader.onmessage = ({ data }: MessageEvent<FromReader>) => answered(data.ok ? data.codes : null);
    reader.postMessage(picture, [picture]);
  });
}
