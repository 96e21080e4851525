/** Records one phrase at a time from the open microphone: from now until it has been said, or nobody said anything. */
import type { AddressWord } from "../intent/phrases";
import type { PhraseLanguage } from "../intent/wording";
import type { SoundSource } from "../microphone";
import { SoundActivity } from "../recogniser/soundActivity";
import { doesListen } from "../screen/model";
import type { Hearing } from "./wireHearing";

export interface Recorded {
  readonly samples: Float32Array;
  readonly rateHz: number;
}

const longestMs = 7_000;
/** Somebody who has not begun by then says nothing. */
const patienceMs = 6_000;
const deaf = { heard: () => undefined, talk: () => undefined, lost: () => undefined, back: () => undefined };

export function takeRecorder(hearing: Hearing) {
  let finish: ((recorded: Recorded | null) => void) | null = null;
  let parts: Float32Array[] = [];
  let activity: SoundActivity | null = null;
  let recordedMs = 0;
  let hasSpoken = false;

  const done = (rateHz: number, isGood: boolean): void => {
    const answer = finish;
    finish = null;
    answer?.(isGood ? { samples: Float32Array.from(parts.flatMap((part) => [...part])), rateHz } : null);
  };
  const stopTap = hearing.tap((samples, rateHz) => {
    if (finish === null) return;
    activity ??= new SoundActivity(rateHz);
    parts.push(samples);
    recordedMs += (samples.length * 1000) / rateHz;
    for (const event of activity.take(samples)) {
      if (event === "speechstart") hasSpoken = true;
      if (event === "speechend" && hasSpoken) return done(rateHz, true);
    }
    if (recordedMs > longestMs) done(rateHz, hasSpoken);
    else if (recordedMs > patienceMs && !hasSpoken) done(rateHz, false);
  });

  return {
    /** @returns whether the microphone opened. */
    open(source: SoundSource, address: AddressWord, language: PhraseLanguage): Promise<boolean> {
      hearing.listen(source, address, deaf, language);
      return new Promise((answer) => {
        const look = () => {
          const { now } = hearing.condition;
          if (now === "asking") return;
          stop();
          answer(doesListen(now));
        };
        const stop = hearing.condition.subscribe(look);
        look();
      });
    },
    record(): Promise<Recorded | null> {
      parts = [];
      recordedMs = 0;
      hasSpoken = false;
      activity = null;
      return new Promise((answer) => {
        finish = answer;
      });
    },
    close(): void {
      stopTap();
      finish?.(null);
      finish = null;
    },
  };
}
