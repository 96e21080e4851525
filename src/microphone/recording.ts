/** A recording as a source: what the practice button plays, heard by the same recogniser at the speed of life. */
import { LevelMeter } from "./level";
import type { SoundSource } from "./vocabulary";

/** As much as an AudioBuffer has of it. */
export interface Recording {
  readonly sampleRate: number;
  readonly length: number;
  readonly numberOfChannels: number;
  getChannelData(channel: number): Float32Array;
}

/** How time is kept: the browser's timers, or a test's. */
export interface Pace {
  /** Calls `turn` every `ms` until the returned function is called. */
  every(ms: number, turn: () => void): () => void;
  /** Monotonic milliseconds. */
  now(): number;
}

const turnMs = 50;
const asRecorded = { echoCancellation: false, noiseSuppression: false, autoGainControl: false } as const;
export const realPace: Pace = {
  every(ms, turn) {
    const id = setInterval(turn, ms);
    return () => clearInterval(id);
  },
  now: () => performance.now(),
};

/** Sound comes as fast as time passes; a timer that is late is caught up with. Says `closed` at its end. */
export function recordingSource(recording: Recording, label: string, pace: Pace = realPace): SoundSource {
  return {
    open(_track, listen) {
      const samples = mono(recording);
      const meter = new LevelMeter(recording.sampleRate);
      const startedMs = pace.now();
      let isOpen = false;
      let sent = 0;
      let isClosed = false;
      const close = () => {
        if (isClosed) return;
        isClosed = true;
        stop();
        queueMicrotask(() => listen({ type: "closed" }));
      };
      const stop = pace.every(turnMs, () => {
        if (!isOpen) listen({ type: "opened", rateHz: recording.sampleRate, label, processing: asRecorded });
        isOpen = true;
        const due = Math.min(samples.length, Math.floor(((pace.now() - startedMs) * recording.sampleRate) / 1000));
        const chunk = samples.slice(sent, due);
        sent = due;
        for (const level of meter.take(chunk)) listen({ type: "level", ...level });
        if (chunk.length > 0) listen({ type: "sound", samples: chunk });
        if (sent === samples.length) close();
      });
      return { close };
    },
  };
}

function mono(recording: Recording): Float32Array {
  const channels = Array.from({ length: recording.numberOfChannels }, (_, c) => recording.getChannelData(c));
  return Float32Array.from({ length: recording.length }, (_, n) => {
    return channels.reduce((sum, channel) => sum + (channel[n] ?? 0), 0) / channels.length;
  });
}
