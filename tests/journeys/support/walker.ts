/** Someone who does what the screen asks, by keys, and by touch for
 * one surface of several: one thing at each call. Used where the session itself is not the point. */
import type { Page } from "playwright-core";

export type Did = "waited" | "acted" | "closed";

interface Seen {
  readonly isRecord: boolean;
  readonly step: string | null;
  readonly kind: string | null;
  readonly question: string | null;
  readonly clocks: Readonly<Record<string, string>>;
}

const look = (page: Page): Promise<Seen> =>
  page.evaluate(() => {
    const now = document.querySelector('[data-testid="now"]');
    const clocks = [...document.querySelectorAll('[data-testid^="clock-"]')].map((clock) => [
      clock.getAttribute("data-testid")?.slice("clock-".length) ?? "",
      clock.getAttribute("data-face") ?? "",
    ]);
    return {
      isRecord: document.querySelector('[data-testid="sealing"]') !== null,
      step: now?.getAttribute("data-step") ?? null,
      kind: now?.getAttribute("data-kind") ?? null,
      question: document.querySelector('[data-testid="question"]')?.getAttribute("aria-label") ?? null,
      clocks: Object.fromEntries(clocks),
    };
  });

/** @param wipes which surface a step wipes: it waits until that one is ready. */
export async function actOnce(page: Page, wipes: Readonly<Record<string, string>>): Promise<Did> {
  const seen = await look(page);
  if (seen.isRecord) return "closed";
  if (seen.question === "Stayed wet?") {
    await page.getByTestId("question").getByRole("button", { name: ": Yes" }).first().click();
    return "acted";
  }
  // Asked after a key for a clock that had gone on meanwhile, on a busy machine: any answer goes on.
  if (seen.question === "Which one?") {
    await page.getByTestId("question").getByRole("button").first().click();
    return "acted";
  }
  const key = keyFor(seen, wipes);
  if (key === null) return "waited";
  await page.keyboard.press(key);
  return "acted";
}

function keyFor({ step, kind, question, clocks }: Seen, wipes: Readonly<Record<string, string>>): string | null {
  if (question?.includes("should be in the container")) return "c";
  if (question === "Close and seal?") return "c";
  if (Object.values(clocks).includes("dry")) return "s";
  if (kind === "atWork") return "t";
  if (kind === "mayClose") return "q";
  const surface = step === null ? undefined : wipes[step];
  if (surface !== undefined && clocks[surface] !== "ready") return null;
  return kind === "steps" ? "PageDown" : null;
}
