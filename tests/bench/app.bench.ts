/**
 * `npm run bench:app`: what the app weighs, how soon it can be used on a slow phone, whether it draws sixty times a second
 * beside the ear, and what it holds after a working day; in a real Chromium. One of them: `-- sizes`, `starts`, `frames`
 * or `memory`, each with a number of its own after it (runs, seconds, hours).
 */
import { loadavg } from "node:os";
import { openBrowser, serve } from "../journeys/support/place";
import { measureFrames } from "./app/frames";
import { measureMemory } from "./app/memory";
import { measureSizes } from "./app/sizes";
import { measureStarts } from "./app/starts";

const [only = "all", amount] = process.argv.slice(2);
const parts = ["sizes", "starts", "frames", "memory"];
if (only !== "all" && !parts.includes(only)) {
  console.error(`"${only}" is not measured. Choose one of: ${parts.join(", ")}; or name none for all of them.`);
  process.exit(2);
}
const isAsked = (part: string) => only === "all" || only === part;
const given = (otherwise: number) => (amount === undefined ? otherwise : Number(amount));

const place = await serve();
const browser = await openBrowser();
try {
  console.log(`load of this machine: ${loadavg()[0]?.toFixed(1)} (what else runs here makes times longer)`);
  if (isAsked("sizes")) await measureSizes();
  if (isAsked("starts")) await measureStarts(browser, place.url, given(5));
  if (isAsked("frames")) await measureFrames(browser, place.url, given(60));
  if (isAsked("memory")) await measureMemory(place.url, given(8));
} finally {
  await browser.close();
  await place.close();
}
