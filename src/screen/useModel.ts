/** React's hold on the model: a screen is drawn again when what is so has changed. */
import { createContext, useContext, useSyncExternalStore } from "react";
import type { Asks, Model, View } from "./model";
import type { StudioModel } from "./sums/studioModel";
import { type ScreenWords, wordsFor } from "./words";

export interface Shared {
  readonly asks: Asks;
  readonly level: Model["level"];
  readonly words: ScreenWords;
  /** Null where nothing can be kept. */
  readonly studio: StudioModel | null;
}

export const SharedContext = createContext<Shared | null>(null);

export function useShared(): Shared {
  const shared = useContext(SharedContext);
  if (!shared) throw new Error("a screen stands outside the app");
  return shared;
}

export const useView = (model: Model): View => useSyncExternalStore(model.subscribe, () => model.view);

export function languageOf(view: View): string {
  return view.at === "session" || view.at === "record" ? view.state.context.input.language : "en";
}

export const wordsOfView = (view: View): ScreenWords => wordsFor(languageOf(view));
