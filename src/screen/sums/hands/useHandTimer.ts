/** The wash or rub timer on a page: it credits only what this page watched, and its count is spoken. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Part } from "../../../announcements/utterance";
import type { HandMethod } from "../../../hands/durations";
import { type HandStep, type HandTimer, type HandWords, startTimer, stop, witness } from "../../../hands/timer";

const lookEveryMs = 200;

export interface HandCount {
  readonly timer: HandTimer | null;
  /** The last thing that was to be said. */
  readonly told: HandWords | null;
  begin(method: HandMethod): void;
  end(): void;
}

/** @param say speaks what the timer says, with the words of `partsOf`. */
export function useHandTimer(say: (words: HandWords) => void): HandCount {
  const [shown, setShown] = useState<Pick<HandCount, "timer" | "told">>({ timer: null, told: null });
  const running = useRef<HandTimer | null>(null);
  const speak = useRef(say);
  useEffect(() => {
    speak.current = say;
  });
  const isRunning = shown.timer?.state === "running";

  const step = useCallback(({ timer, say: words }: HandStep): void => {
    running.current = timer;
    setShown((before) => ({ timer, told: words.at(-1) ?? before.told }));
    for (const one of words) speak.current(one);
  }, []);

  useEffect(() => {
    if (!isRunning) return;
    let last = performance.now();
    const watch = setInterval(() => {
      const now = performance.now();
      const timer = running.current;
      if (timer) step(witness(timer, now - last));
      last = now;
    }, lookEveryMs);
    return () => clearInterval(watch);
  }, [isRunning, step]);

  return {
    ...shown,
    begin(method) {
      running.current = startTimer(method);
      setShown({ timer: running.current, told: null });
    },
    end() {
      if (running.current) step(stop(running.current));
    },
  };
}

/** As parts, so that each has its clip: the count is a number, the rest the words of the language. */
export function partsOf(
  words: HandWords,
  number: (value: number) => string,
  spoken: { done: Readonly<Record<HandMethod, string>>; startAgain: string; secondsShort: string },
): readonly Part[] {
  switch (words.code) {
    case "count":
      return [{ kind: "number", value: words.seconds, text: number(words.seconds) }];
    case "done":
      return [{ kind: "fixed", text: spoken.done[words.method] }];
    case "start-again":
      return [{ kind: "fixed", text: spoken.startAgain }];
    case "short":
      return [
        { kind: "number", value: words.shortS, text: number(words.shortS) },
        { kind: "fixed", text: ` ${spoken.secondsShort}` },
      ];
  }
}
