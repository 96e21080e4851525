/** Every screen and state of the app, one after another, in a language: for pictures, for axe, for measuring. */
import type { Page } from "playwright-core";
import type { SpokenLanguage } from "../../../src/announcements/phrasebooks";
import { pageIds } from "../../../src/screen/pages/page";
import { wordsFor } from "../../../src/screen/words";
import type { ScreenWords } from "../../../src/screen/words/words";
import { Protocol } from "../../../src/session/protocol";
import { conventionBooth } from "../../../src/session/protocols/conventionBooth";
import { patienceMs } from "./artist";

/** The convention booth, but for contact times that nobody has to wait for. */
const quickBooth = Protocol.parse({
  ...conventionBooth,
  ...{ id: "quickBooth", name: { en: "Booth with short waits", es: "Stand con esperas cortas" } },
  products: conventionBooth.products.map((slot) => ({ ...slot, label: { ...slot.label, contactSec: 12 } })),
});

const mayBeLeftOut = new Set(quickBooth.setUp.filter(({ skippable }) => skippable).map(({ id }) => id));

const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

/** @returns a picture of where the session stands, without words of any language. */
const look = (page: Page) =>
  page.evaluate(() => {
    const now = document.querySelector('[data-testid="now"]');
    const question = document.querySelector('[data-testid="question"]');
    const faces = [...document.querySelectorAll('[data-testid^="clock-"]')].map((face) =>
      face.getAttribute("data-face"),
    );
    return {
      kind: document.querySelector('[data-testid="sealing"]') ? "record" : (now?.getAttribute("data-kind") ?? null),
      step: now?.getAttribute("data-step") ?? null,
      question: question?.getAttribute("aria-label") ?? null,
      faces,
    };
  });
type Seen = Awaited<ReturnType<typeof look>>;

/**
 * @param visit called with the name of each screen as it stands there.
 * @param only "pages", "session" or all.
 * @param words as the screens have them, where they are not the language's own.
 */
export async function everyScreen(
  page: Page,
  url: string,
  language: SpokenLanguage,
  visit: (name: string) => Promise<void>,
  only: "pages" | "session" | "all" = "all",
  words: ScreenWords = wordsFor(language),
): Promise<void> {
  const asks = words.session.asks;
  const button = (name: string) => page.getByRole("button", { name, exact: true });

  if (only !== "session") {
    for (const id of pageIds) {
      await page.goto(`${url}#${id}`);
      await page.getByRole("heading", { level: 1, name: words.pages.names[id], exact: true }).waitFor();
      await page.locator("main").filter({ visible: true }).waitFor();
      await pause(250);
      await visit(`page ${id}`);
    }
    await page.goto(`${url}#prepare`);
    await button(words.prepare.start).click();
    await visit("page prepare, what is missing");
  }
  if (only === "pages") return;

  /** One act of a patient person, then a look. */
  const act = async (): Promise<Seen> => {
    const seen = await look(page);
    const { question, kind, faces } = seen;
    if (question === asks.wetness) {
      await page.getByTestId("question").getByRole("button").first().click();
    } else if (
      question?.startsWith(asks.sharps(9).split("9")[0] || "\0") ||
      question?.endsWith(asks.sharps(9).split("9")[1] ?? "\0")
    )
      await page.keyboard.press("c");
    else if (question !== null) await page.keyboard.press("c");
    else if (faces.includes("dry")) await page.keyboard.press("s");
    else if (faces.some((face) => face === "counting" || face === "reapply")) await pause(500);
    else if (kind === "atWork") await page.keyboard.press("t");
    else if (kind === "mayClose") await page.keyboard.press("q");
    else await page.keyboard.press("PageDown");
    await pause(70);
    return look(page);
  };
  const until = async (isThere: (seen: Seen) => boolean): Promise<void> => {
    const endMs = Date.now() + 4 * patienceMs;
    for (let seen = await look(page); !isThere(seen); seen = await act()) {
      if (Date.now() > endMs) throw new Error(`never came to it; stands at ${JSON.stringify(seen)}`);
    }
    await pause(150);
  };
  const begin = async (client: string): Promise<void> => {
    await page.getByRole("textbox", { name: words.prepare.client }).fill(client);
    await page.getByRole("textbox", { name: words.prepare.artist }).fill("Artist A");
    await page.getByRole("textbox", { name: words.prepare.station }).fill("Station 1");
    await button(words.prepare.start).click();
    await page.getByTestId("session").waitFor({ timeout: patienceMs });
    await pause(400);
  };

  await page.goto(`${url}#prepare`);
  await page
    .getByTestId("protocol-file")
    .setInputFiles({ name: "p.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(quickBooth)) });
  const name = quickBooth.name[language] ?? quickBooth.name.en;
  await pause(800);
  await page.getByRole("radio", { name }).waitFor({ state: "attached", timeout: patienceMs });
  await page.getByRole("radio", { name }).check({ force: true });
  await begin("C-014");
  await visit("session, first step");
  await page.keyboard.press("q");
  await page.getByRole("alert").first().waitFor();
  await pause(150);
  await visit("session, refused");
  await until(({ step }) => step !== null && mayBeLeftOut.has(step));
  await page.keyboard.press("k");
  await page.getByTestId("question").waitFor();
  await visit("session, why left out");
  await page.keyboard.press("n");
  await until(({ question }) => question === null);
  await page.keyboard.press("p");
  await pause(250);
  await visit("session, paused");
  await page.keyboard.press("v");
  await pause(150);
  await page.getByRole("button", { name: new RegExp(words.session.everything) }).click();
  await page.getByRole("dialog").waitFor();
  await visit("session, all phrases");
  await button(words.session.close).click();
  await until(({ faces }) => faces.filter((face) => face === "counting").length >= 2);
  await visit("session, wet clocks");
  await until(({ question }) => question === asks.wetness);
  await visit("session, stayed wet");
  await until(({ kind }) => kind === "atWork");
  await visit("session, at work");
  await page.getByRole("button", { name: words.command.touched }).first().click();
  await until(({ question }) => question === asks.item);
  await visit("session, which one");
  await page.getByTestId("question").getByRole("button").first().click();
  await until(({ question }) => question !== null && question !== asks.wetness && question !== asks.item);
  await visit("session, sharps");
  await until(({ question }) => question === asks.close);
  await visit("session, close");
  await page.keyboard.press("c");
  await page.getByTestId("sealing").getByText(words.record.sealed, { exact: true }).waitFor({ timeout: patienceMs });
  await visit("record");
  await button(words.record.again).click();
  // What these pages hold once there was a session.
  for (const id of ["records", "protocols", "prepare"] as const) {
    await page.goto("about:blank");
    await page.goto(`${url}#${id}`);
    await page.getByRole("heading", { level: 1, name: words.pages.names[id], exact: true }).waitFor();
    await page.locator("main").filter({ visible: true }).waitFor();
    await pause(400);
    await visit(`page ${id}, after a session`);
  }
  await begin("C-015");
  await page.keyboard.press("F9");
  await page.getByRole("heading", { name: words.session.firstAid }).waitFor();
  await visit("session, first aid");
  await page.keyboard.press("y");
  await until(({ question }) => question === asks.exposureEnd);
  await visit("session, end after the accident");
  await page.keyboard.press("n");
  await until(({ question }) => question === asks.firstAid);
  await page.keyboard.press("v");
  await until(({ question }) => question === null);
  await visit("session, going on after the accident");
}
