/**
 * The screen of each page. Each is fetched when it is first opened, so that the prepare screen is there at once; those of
 * a session are fetched as one, before it begins.
 */
import { type ComponentType, lazy } from "react";
import { fetchedOnce } from "../fetchedOnce";
import type { PrepareView } from "../model";
import type { OtherPageId } from "./page";

export interface PageProps {
  readonly view: PrepareView;
}

const fetched = (load: () => Promise<ComponentType<PageProps>>) => lazy(async () => ({ default: await load() }));

export const pageScreens: Readonly<Record<OtherPageId, ComponentType<PageProps>>> = {
  records: fetched(async () => (await import("../archive/Records")).Records),
  keeping: fetched(async () => (await import("../archive/Keeping")).KeepingPage),
  protocols: fetched(async () => (await import("../protocols/ProtocolsScreen")).ProtocolsScreen),
  accident: fetched(async () => (await import("../accident/AccidentScreen")).AccidentScreen),
  verify: fetched(async () => (await import("../verify/Verify")).Verify),
  shelf: fetched(async () => (await import("../sums/shelf/ShelfScreen")).ShelfScreen),
  mixing: fetched(async () => (await import("../sums/mixing/Mixing")).Mixing),
  steriliser: fetched(async () => (await import("../sums/steriliser/SteriliserScreen")).SteriliserScreen),
  hands: fetched(async () => (await import("../sums/hands/Hands")).Hands),
  due: fetched(async () => (await import("../sums/due/Due")).Due),
  place: fetched(async () => (await import("../sums/place/Place")).Place),
  welcome: fetched(async () => (await import("../first/FirstRun")).FirstRun),
  voice: fetched(async () => (await import("../voice/VoiceScreen")).VoiceScreen),
  settings: fetched(async () => (await import("../settings/SettingsScreen")).SettingsScreen),
};

/** They speak or listen, so they open once the companion is here. */
export const speakingPages: ReadonlySet<OtherPageId> = new Set(["protocols", "hands", "welcome", "voice"]);

export const sessionScreens = fetchedOnce(async () => {
  const [{ Session }, { Record }] = await Promise.all([import("../session/Session"), import("../record/Record")]);
  return { Session, Record };
});
