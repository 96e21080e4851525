/** Looks at the page as it stands with axe, on a phone and on a screen; keeps a picture where the folder LOOK is named. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

export async function violationsAtSizes(page: Page, name: string, colorScheme: "light" | "dark"): Promise<string[]> {
  await page.emulateMedia({ colorScheme });
  const found: string[] = [];
  for (const [width, height] of [
    [360, 640],
    [1280, 800],
  ] as const) {
    await page.setViewportSize({ width, height });
    const { violations } = await new AxeBuilder({ page }).analyze();
    found.push(...violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${width}: ${id} ${target}`)));
    if (process.env.LOOK)
      await page.screenshot({ path: `${process.env.LOOK}/${name}-${colorScheme}-${width}.png`, fullPage: true });
  }
  return found;
}
