/** Begins a session whose surfaces have to stay wet for as long as the measuring needs. */
import type { BrowserContext, Page } from "playwright-core";
import { wordsFor } from "../../../src/screen/words";
import { cartridgeMachine } from "../../../src/session/protocols/cartridge";
import { choose, fillIn, openApp, start } from "../../journeys/support/artist";

/** A step that wipes several surfaces waits until the one that was wetted last is ready. */
export const wipes = { wipeSurfaces: "chair", wipeFurniture: "chair", wipeElectrics: "cord", wipeTools: "machine" };

/** What runs these measurements marks each function with its name, by a helper that the page does not have. */
export const bearNames = (context: BrowserContext): Promise<unknown> =>
  context.addInitScript("globalThis.__name = (one) => one");

export async function begin(page: Page, url: string, contactSec: number): Promise<void> {
  const w = wordsFor("en").prepare;
  const field = (name: string) => page.getByRole("textbox", { name }).first();
  await openApp(page, url);
  await choose(page, cartridgeMachine);
  await fillIn(page);
  await field(`${w.contact}, ${w.minutes}`).fill("0");
  await field(`${w.contact}, ${w.seconds}`).fill(String(contactSec));
  await field(`${w.reapply}, ${w.minutes}`).fill("");
  await field(`${w.reapply}, ${w.seconds}`).fill("");
  await start(page);
}
