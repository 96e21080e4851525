/**
 * The microphone: asks for it, captures in an audio context of its own, meters, and says at once when it is lost. A thin
 * adapter over the browser; what it decides is in `loss.ts` and `level.ts`.
 */
import captureUrl from "./capture.worklet?worker&url";
import { LevelMeter } from "./level";
import { LossWatch, tickMs } from "./loss";
import type { Processing, RefusedBecause, SoundEvent, SoundSource } from "./vocabulary";

/** The sound as it is: processing made for telephone calls pumps with a machine's buzz and cuts first syllables. */
export const untouched = { echoCancellation: false, noiseSuppression: false, autoGainControl: false } as const;

export interface MicrophoneOptions {
  /** As `microphones()` gives it; without it, the browser's own choice. */
  readonly deviceId?: string;
  readonly processing?: Readonly<Record<keyof Processing, boolean>>;
  /** What this page plays, so that its echo can be taken out. */
  readonly played?: MediaStream | null;
}

/** One microphone as a source. Asking for permission happens in `open`, so call it from a tap or a key. */
export function microphone(options: MicrophoneOptions = {}): SoundSource {
  return {
    open(track, listen) {
      const closing = new AbortController();
      const tell = (event: SoundEvent) => {
        if (!closing.signal.aborted) listen(event);
      };
      const close = () => {
        if (closing.signal.aborted) return;
        closing.abort();
        queueMicrotask(() => listen({ type: "closed" }));
      };
      capture(track, options, tell, closing.signal).catch((error: unknown) => {
        const message = error instanceof Error ? error.message : String(error);
        tell({ type: "refused", reason: reasonOf(error), message });
        close();
      });
      return { close };
    },
  };
}

async function capture(
  given: MediaStreamTrack | null,
  { deviceId, processing = untouched, played = null }: MicrophoneOptions,
  tell: (event: SoundEvent) => void,
  signal: AbortSignal,
): Promise<void> {
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (devices === undefined) throw new DOMException("no microphone in an insecure page", "NotSupportedError");
  const device = deviceId === undefined ? {} : { deviceId: { exact: deviceId } };
  const wanted = { audio: { ...processing, ...device, channelCount: 1 } };
  const stream = given ? new MediaStream([given]) : await devices.getUserMedia(wanted);
  const track = stream.getAudioTracks()[0];
  if (track === undefined) throw new DOMException("the stream has no sound", "NotFoundError");
  const release = () => {
    if (given === null) track.stop();
  };
  if (signal.aborted) return release();
  signal.addEventListener("abort", release);
  const context = new AudioContext({ latencyHint: "interactive" });
  signal.addEventListener("abort", () => void context.close());
  await context.audioWorklet.addModule(captureUrl);
  if (signal.aborted) return;
  const node = new AudioWorkletNode(context, "capture", {
    numberOfInputs: 2,
    numberOfOutputs: 1,
    outputChannelCount: [1],
  });
  context.createMediaStreamSource(stream).connect(node, 0, 0).connect(context.destination);
  if (played) join(context, played, node);
  watch(track, context, node, tell, signal);
  await context.resume();
}

/** Firefox does not join contexts of different rates: then nothing is known of the echo, and the ear works all the same. */
function join(context: AudioContext, played: MediaStream, node: AudioNode): void {
  try {
    context.createMediaStreamSource(played).connect(node, 0, 1);
  } catch {
    // The words being said are still guarded.
  }
}

interface Chunk {
  readonly firstFrame: number;
  readonly samples: Float32Array;
  readonly played: Float32Array | null;
}

function watch(
  track: MediaStreamTrack,
  context: AudioContext,
  node: AudioWorkletNode,
  tell: (event: SoundEvent) => void,
  signal: AbortSignal,
): void {
  const meter = new LevelMeter(context.sampleRate);
  const loss = new LossWatch(context.sampleRate, performance.now());
  const tellAll = (events: readonly SoundEvent[]) => events.forEach(tell);
  let isOpen = false;
  /** Open is only said when sound comes: a context that may not run yet, or a muted device, would seem to listen. */
  const openWith = (): void => {
    isOpen = true;
    const { echoCancellation, noiseSuppression, autoGainControl } = track.getSettings();
    const real = { echoCancellation: echoCancellation as boolean | undefined, noiseSuppression, autoGainControl };
    tell({ type: "opened", rateHz: context.sampleRate, label: track.label, processing: real });
  };
  if (track.muted) tellAll(loss.stopped("muted"));
  node.port.addEventListener(
    "message",
    ({ data }: MessageEvent<Chunk>) => {
      if (!isOpen && !loss.isLost) openWith();
      tellAll(loss.chunk(performance.now(), data.firstFrame, data.samples.length));
      for (const level of meter.take(data.samples)) tell({ type: "level", ...level });
      tell({ type: "sound", samples: data.samples, played: data.played });
    },
    { signal },
  );
  node.port.start();
  track.addEventListener("ended", () => tellAll(loss.stopped("ended")), { signal });
  track.addEventListener("mute", () => tellAll(loss.stopped("muted")), { signal });
  track.addEventListener("unmute", () => tellAll(loss.resumed("muted")), { signal });
  context.addEventListener(
    "statechange",
    () => {
      tellAll(context.state === "running" ? loss.resumed("suspended") : loss.stopped("suspended"));
      if (context.state === "suspended") void context.resume();
    },
    { signal },
  );
  const ticking = setInterval(() => tellAll(loss.tick(performance.now())), tickMs);
  signal.addEventListener("abort", () => clearInterval(ticking));
}

/** Names of DOMException as Media Capture and Streams gives them (W3C, getUserMedia algorithm). */
function reasonOf(error: unknown): RefusedBecause {
  const name = error instanceof DOMException ? error.name : "";
  if (name === "NotAllowedError" || name === "SecurityError") return "denied";
  if (name === "NotFoundError" || name === "OverconstrainedError") return "no-device";
  if (name === "NotReadableError" || name === "AbortError") return "busy";
  return name === "NotSupportedError" ? "unsupported" : "failed";
}
