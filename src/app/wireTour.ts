/** The tour, wired: its sentences to the voice, what is heard and the passing of time back to it. */
import { bookFor, type SpokenLanguage } from "../announcements/phrasebooks";
import { sayTourStop } from "../announcements/sayTour";
import { firstStop, type Tour, type TourEvent, tourAfter } from "../announcements/tour";
import { textOf } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import { type AddressWord, type CommandId, commandIds } from "../intent/phrases";
import type { SoundSource } from "../microphone";
import { doesListen, type TourView } from "../screen/model";
import { type Watched, watchedValue } from "./watchedValue";
import type { Hearing } from "./wireHearing";

export interface TourParts {
  readonly voice: Voice;
  readonly hearing: Hearing;
  readonly openMicrophone: () => SoundSource;
  readonly language: () => SpokenLanguage;
}

/** Turns of its own, apart from those of a session, of the sound check and of the studio's screens. */
const firstTurn = 4_000_000;
const tickMs = 400;

export function wireTour({ voice, hearing, openMicrophone, language }: TourParts) {
  const shown = watchedValue<TourView | null>(null);
  let tour: Tour | null = null;
  let turn = firstTurn;
  let address: AddressWord = "station";
  let ticking: ReturnType<typeof setInterval> | undefined;

  const draw = (): void => {
    const says = tour && textOf(sayTourStop(bookFor(language()), tour.stop, address));
    shown.set(tour && says !== null ? { stop: tour.stop, stage: tour.stage, says, address } : null);
  };
  const say = (): void => {
    if (!tour) return;
    turn += 1;
    const utterance = sayTourStop(bookFor(language()), tour.stop, address);
    hearing.saying(textOf(utterance));
    voice.speak(turn, utterance);
  };
  const take = (event: TourEvent): void => {
    if (!tour) return;
    const before = tour;
    tour = tourAfter(tour, event);
    if (tour === before) return;
    if (tour === null) stop();
    else if (tour.stop !== before.stop) say();
    draw();
  };
  voice.onEnded((ended) => {
    if (ended !== turn) return;
    hearing.saying(null);
    take({ type: "spoken" });
  });

  function stop(): void {
    clearInterval(ticking);
    tour = null;
    turn += 1;
    voice.stop();
    hearing.saying(null);
    hearing.stop();
    draw();
  }

  return {
    now: shown as Watched<TourView | null>,
    begin(called: AddressWord): void {
      if (tour) return;
      address = called;
      tour = firstStop;
      hearing.allow(new Set<CommandId>(commandIds));
      const listener = {
        heard: (heard: Parameters<Parameters<Hearing["listen"]>[2]["heard"]>[0]) => {
          if (heard.kind !== "understood") return;
          voice.cue("heard");
          take({ type: "heard", command: heard.command });
        },
        talk: () => undefined,
        lost: () => undefined,
        back: () => undefined,
      };
      hearing.listen(openMicrophone(), address, listener, language());
      ticking = setInterval(() => {
        take({ type: "waited", ms: tickMs, doesListen: doesListen(hearing.condition.now) });
      }, tickMs);
      say();
      draw();
    },
    next: (): void => take({ type: "next" }),
    stop(): void {
      if (tour) stop();
    },
  };
}
