/** What is wrong with the page as it stands, each fault in words: targets, cut texts, accessibility. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

/** @param rules of axe; all of them where none are named. */
export async function violations(page: Page, rules?: string[]): Promise<string[]> {
  const builder = new AxeBuilder({ page });
  const { violations: found } = await (rules ? builder.withRules(rules) : builder).analyze();
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} ${target}: ${failureSummary}`),
  );
}

/**
 * Controls smaller than a finger, or, in a session, than a gloved thumb under film: 44 and 96 CSS px (WCAG 2.2, 2.5.5
 * gives 44; 96 is the companion's own). A field counts with the label around it, for that is touched as well.
 */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const controls = "button, a[href], input, select, textarea, summary, [role='button']";
    return [...document.querySelectorAll<HTMLElement>(controls)].flatMap((control) => {
      if (!control.checkVisibility({ visibilityProperty: true })) return [];
      if (control instanceof HTMLInputElement && control.type === "file") return [];
      const target = (control.matches("input, select, textarea") && control.closest("label")) || control;
      const { width, height } = target.getBoundingClientRect();
      const least = control.closest('[data-testid="session"]') ? 96 : 44;
      const isLarge = Math.min(width, height) >= least - 0.5;
      const name = control.getAttribute("aria-label") ?? control.textContent ?? control.id;
      return isLarge ? [] : [`${name.slice(0, 40)}: ${Math.round(width)} by ${Math.round(height)}`];
    });
  });

/**
 * Texts that are cut off, stick out, are broken inside a word, or lie on one another; a page that scrolls sideways.
 * What is for screen readers alone is left out, a user's own text that ends in an ellipsis, and what is drawn: a drawing
 * has its words beside it.
 */
export const cutTexts = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const { innerWidth } = globalThis;
    const faults: string[] = [];
    if (document.documentElement.scrollWidth > innerWidth) faults.push("the page scrolls sideways");
    const scope = document.querySelector("dialog[open]") ?? document.body;
    const walk = document.createTreeWalker(scope, NodeFilter.SHOW_TEXT);
    const ancestors = function* (from: Element | null) {
      for (let at = from; at; at = at.parentElement) yield at;
    };
    const isForEars = (element: Element) =>
      [...ancestors(element)].some((at) => getComputedStyle(at).clipPath !== "none");
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const element = node.parentElement;
      const text = node.textContent ?? "";
      if (
        !element ||
        text.trim() === "" ||
        isForEars(element) ||
        element instanceof SVGElement ||
        element.matches("option, script, style, noscript")
      )
        continue;
      if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
      const style = getComputedStyle(element);
      if (style.textOverflow === "ellipsis" || style.webkitLineClamp !== "none") continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const box = range.getBoundingClientRect();
      const clipping = [...ancestors(element)].find((at) => getComputedStyle(at).overflowX !== "visible");
      const edge = clipping?.getBoundingClientRect();
      // Left out whole for want of room, on purpose.
      if (edge && clipping?.matches("[data-whole-groups]") && box.left >= edge.right - 1) continue;
      const isScrolled = clipping !== undefined && clipping.scrollWidth > clipping.clientWidth + 1;
      const right =
        edge && !(isScrolled && clipping.matches("[tabindex]")) ? Math.min(edge.right, innerWidth) : innerWidth;
      const name = text.trim().slice(0, 40);
      if (box.right > right + 1 && !(isScrolled && clipping?.matches("[tabindex]"))) faults.push(`sticks out: ${name}`);
      const hiding = [...ancestors(element)].find((at) => /hidden|clip/.test(getComputedStyle(at).overflowY));
      if (hiding && hiding !== document.body && box.bottom > hiding.getBoundingClientRect().bottom + 2)
        faults.push(`is cut off below: ${name}`);
      for (const word of text.matchAll(/[\p{L}]{2,20}/gu)) {
        range.setStart(node, word.index);
        range.setEnd(node, word.index + word[0].length);
        const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (tops.size > 1) faults.push(`breaks: ${word[0]}`);
      }
    }
    for (const bar of document.querySelectorAll('[data-testid="session"] > header')) {
      const parts = [...bar.children].filter((part) => part.getBoundingClientRect().width > 0);
      for (const [at, part] of parts.entries()) {
        const before = parts[at - 1];
        if (!before) continue;
        const a = document.createRange();
        a.selectNodeContents(before);
        const [left, here] = [a.getBoundingClientRect(), part.getBoundingClientRect()];
        if (left.right > here.left + 1 && left.bottom > here.top + 1 && left.top < here.bottom - 1)
          faults.push(`lies on another: ${before.textContent}`);
      }
    }
    return [...new Set(faults)];
  });

/** Targets and texts of the main part that a scroll would have to fetch. */
export const outOfSight = (page: Page, what: string): Promise<string[]> =>
  page.evaluate((selector) => {
    const main = document.querySelector("main")?.getBoundingClientRect();
    if (!main) return ["there is no main part"];
    return [...document.querySelectorAll(selector)].flatMap((element) => {
      const { top, bottom } = element.getBoundingClientRect();
      return top >= main.top - 1 && bottom <= main.bottom + 1 ? [] : [(element.textContent ?? "").slice(0, 40)];
    });
  }, what);
