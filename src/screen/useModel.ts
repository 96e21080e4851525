/** React's hold on the model: a screen is drawn again when what is so has changed. */
import { createContext, useContext, useSyncExternalStore } from "react";
import { type SpokenLanguage, spokenOr } from "../announcements/languages";
import type { CodeCamera } from "../barcode/codeCamera";
import type { Archive } from "../finding/archive";
import { type Wording, wordings } from "../intent/wording";
import type { Keeping } from "./archive/keepingModel";
import type { HandOver } from "./handOver";
import type { Asks, Model, View } from "./model";
import type { Beside } from "./personal/besideModel";
import type { ProtocolsModel } from "./protocols/protocolsModel";
import type { Settings } from "./settings/settings";
import type { StudioModel } from "./sums/studioModel";
import type { TeachModel } from "./voice/teachModel";
import type { ScreenWords } from "./words/words";

export interface Shared extends DeviceParts {
  readonly asks: Asks;
  readonly teaching: TeachModel;
  readonly companion: Model["companion"];
  readonly level: Model["level"];
  readonly soundLost: Model["soundLost"];
  readonly device: Model["device"];
  readonly tour: Model["tour"];
  readonly settings: Settings;
  /** What is shown now: the session's language, or the device's between sessions. */
  readonly language: SpokenLanguage;
  readonly words: ScreenWords;
  /** The phrases and address words of that language. */
  readonly phrases: Wording;
}

export const SharedContext = createContext<Shared | null>(null);

export function useShared(): Shared {
  const shared = useContext(SharedContext);
  if (!shared) throw new Error("a screen stands outside the app");
  return shared;
}

export const useView = (model: Model): View => useSyncExternalStore(model.subscribe, () => model.view);

export const useSettings = (model: Model): Settings =>
  useSyncExternalStore(model.settings.subscribe, () => model.settings.now);

export const languageOf = (view: View, settings: Settings): SpokenLanguage =>
  view.at === "session" || view.at === "record" ? spokenOr(view.state.context.input.language) : settings.language;

/** What the screens are given of this device; null where nothing can be kept. */
export interface DeviceParts {
  readonly handOver: HandOver;
  readonly studio: StudioModel | null;
  readonly camera: CodeCamera;
  readonly protocols: ProtocolsModel | null;
  readonly archive: Archive | null;
  readonly keeping: Keeping | null;
  readonly beside: Beside | null;
}

/** What every screen is given. */
export const sharedOf = (
  { asks, teaching, companion, level, soundLost, device, tour, words }: Model,
  settings: Settings,
  language: SpokenLanguage,
  parts: DeviceParts,
): Shared => ({
  asks,
  teaching,
  companion,
  level,
  soundLost,
  device,
  tour,
  settings,
  language,
  words: words.in(language),
  phrases: wordings[language],
  ...parts,
});
