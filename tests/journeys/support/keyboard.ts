/** Someone without a mouse: Tab to get there, letters to fill in, arrows and Enter to choose. Nothing is clicked. */
import type { Locator, Page } from "playwright-core";

const mostTabs = 400;

const hasFocus = (control: Locator): Promise<boolean> =>
  control.evaluateAll(([element, ...others]) => {
    if (others.length > 0) throw new Error("several are meant");
    return element !== undefined && element === document.activeElement;
  });

/** Presses Tab until the control has the focus; one that cannot be reached fails the journey. */
export async function reach(page: Page, control: Locator): Promise<void> {
  await control.waitFor();
  for (let tab = 0; tab < mostTabs; tab++) {
    if (await hasFocus(control)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`the keyboard does not reach ${control}`);
}

export async function press(page: Page, control: Locator): Promise<void> {
  await reach(page, control);
  await page.keyboard.press("Enter");
}

/** Fills a field anew. */
export async function type(page: Page, control: Locator, text: string): Promise<void> {
  await reach(page, control);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.press("Delete");
  await page.keyboard.insertText(text);
}

/** A date is typed digit by digit, as American English asks for it: month, day, year. @param day "2026-11-25" */
export async function typeDate(page: Page, control: Locator, day: string): Promise<void> {
  const [year = "", month = "", date = ""] = day.split("-");
  await reach(page, control);
  await page.keyboard.type(`${month}${date}${year}`);
}

/** Chooses an entry of a list by the letters it begins with. */
export async function pick(page: Page, list: Locator, letters: string): Promise<void> {
  await reach(page, list);
  await page.keyboard.type(letters);
}

/** Goes through the choices by arrow until this one is chosen. */
export async function select(page: Page, choice: Locator): Promise<void> {
  const name = await choice.getAttribute("name");
  await reach(page, page.locator(`input[name="${name}"]:checked`));
  for (let arrow = 0; arrow < 20 && !(await choice.isChecked()); arrow++) await page.keyboard.press("ArrowRight");
  if (!(await choice.isChecked())) throw new Error(`the arrows do not reach ${choice}`);
}
