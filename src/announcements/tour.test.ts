import { describe, expect, it } from "vitest";
import { phrasebookTexts } from "./everyText";
import { bookFor, spokenLanguages } from "./phrasebooks";
import { sayTourStop } from "./sayTour";
import { firstStop, type Tour, type TourEvent, tourAfter, tourStops, triedAt } from "./tour";
import { textOf, wordsIn } from "./utterance";

/** The tour after several events; null when it is over. */
const later = (events: readonly TourEvent[], from: Tour | null = firstStop): Tour | null =>
  events.reduce<Tour | null>((tour, event) => (tour === null ? null : tourAfter(tour, event)), from);

const spoken = { type: "spoken" } as const;
const second = { type: "waited", ms: 1_000, doesListen: true } as const;
const seconds = (count: number, event: TourEvent = second) => Array.from({ length: count }, () => event);

describe("the tour", () => {
  it("goes on by itself after a sentence that asks for nothing", () => {
    expect(later([spoken, ...seconds(2)])?.stop).toBe("done");
  });

  it("waits for the phrase it asked for, and goes on when it was heard", () => {
    const trying = later([spoken, ...seconds(2), spoken, ...seconds(8)]);
    expect(trying).toMatchObject({ stop: "done", stage: "trying" });
    const heard = later([{ type: "heard", command: "done" }], trying);
    expect(heard).toMatchObject({ stop: "done", stage: "heard" });
    expect(later(seconds(2), heard)?.stop).toBe("whatNow");
  });

  it("does nothing on another phrase, the accident's among them", () => {
    const trying = later([spoken, ...seconds(2), spoken]);
    expect(later([{ type: "heard", command: "accident" }], trying)).toEqual(trying);
  });

  it("holds nobody: without an answer it goes on, sooner where nothing can be heard", () => {
    const trying = later([spoken, ...seconds(2), spoken]);
    expect(later(seconds(15), trying)?.stop).toBe("whatNow");
    expect(later(seconds(5, { ...second, doesListen: false }), trying)?.stop).toBe("whatNow");
  });

  it("never speaks over itself: time does not count while a sentence sounds", () => {
    expect(later(seconds(60))).toEqual(firstStop);
  });

  it("ends after its last stop", () => {
    expect(later(tourStops.map(() => ({ type: "next" })))).toBeNull();
  });

  it.each(spokenLanguages)(
    "lasts about two minutes in %s, at 150 words a minute with a try at each phrase",
    (language) => {
      const book = bookFor(language);
      const words = tourStops.reduce((sum, stop) => sum + wordsIn(textOf(sayTourStop(book, stop, "station"))), 0);
      const tries = tourStops.filter((stop) => triedAt[stop] !== null).length;
      const seconds = (words / 150) * 60 + tries * 4 + tourStops.length * 1.2;
      expect(seconds).toBeGreaterThan(60);
      expect(seconds).toBeLessThanOrEqual(130);
      expect(phrasebookTexts(book)).toContain(book.tour.welcome);
    },
  );
});
