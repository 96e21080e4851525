/** What a device may wish of the look: light or dark, more contrast, the system's own few colours. */
import type { Page } from "playwright-core";

export const looks = ["light", "dark", "contrast light", "contrast dark", "forced colours"] as const;
export type Look = (typeof looks)[number];

export async function wear(page: Page, look: Look): Promise<void> {
  const isContrast = look.startsWith("contrast");
  await page.emulateMedia({
    colorScheme: look.endsWith("light") ? "light" : "dark",
    contrast: isContrast ? "more" : "no-preference",
    forcedColors: look === "forced colours" ? "active" : "none",
  });
  // The page hears of the wish by an event, and writes it down.
  await page.waitForFunction(
    (wanted) => document.documentElement.dataset.contrast === wanted,
    isContrast ? "more" : "usual",
  );
}

/** A phone, a tablet upright and on its side, a large screen: width and height in CSS pixels. */
export const sizes = [
  [360, 640],
  [768, 1024],
  [1280, 800],
  [1920, 1080],
] as const;
