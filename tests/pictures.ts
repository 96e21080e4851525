/**
 * `npm run pictures`: every screen and state, in each theme, size and language, from the app as it is served in a real
 * Chromium, on one sheet to be looked at: out/pictures/index.html. The README's pictures and those of the manifest are
 * taken from the same walk.
 * `npm run pictures -- es pages` for one language or part.
 */
import { copyFileSync, cpSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { type SpokenLanguage, spokenLanguages } from "../src/announcements/phrasebooks";
import { installPictures, pictureFile } from "../src/app/manifestFiles";
import { everyScreen } from "./journeys/support/everyScreen";
import { openBrowser, serve } from "./journeys/support/place";

const folder = "out/pictures";
const sizes = [
  [360, 640],
  [768, 1024],
  [1280, 800],
  [1920, 1080],
] as const;
const themes = ["light", "dark", "contrast"] as const;
type Theme = (typeof themes)[number];

/** Of the README: name of the screen in the walk, and of the file. English, light, 1280 by 800. */
const forReadme: Readonly<Record<string, string>> = {
  "page prepare": "prepare",
  "session, wet clocks": "station",
  "page welcome": "firstSteps",
  record: "record",
};

/** Shown before the app is installed: name of the screen in the walk, and in the manifest. Light. */
const forInstall: Readonly<Record<string, (typeof installPictures)[number]["screen"]>> = {
  "page prepare": "prepare",
  "session, wet clocks": "station",
};

async function wear(page: Page, theme: Theme): Promise<void> {
  await page.emulateMedia({ colorScheme: theme === "light" ? "light" : "dark" });
  await page.evaluate(
    (contrast) => {
      document.documentElement.dataset.contrast = contrast;
    },
    theme === "contrast" ? "more" : "usual",
  );
}

interface Picture {
  readonly screen: string;
  readonly language: SpokenLanguage;
  readonly theme: Theme;
  readonly size: string;
  readonly file: string;
}

const wanted = process.argv.slice(2);
const part = wanted.includes("pages") ? "pages" : wanted.includes("session") ? "session" : "all";
const languages = spokenLanguages.filter(
  (each) => wanted.includes(each) || !spokenLanguages.some((l) => wanted.includes(l)),
);

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const place = await serve();
const browser = await openBrowser();
const pictures: Picture[] = [];

for (const language of languages) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: language });
  const page = await context.newPage();
  await everyScreen(
    page,
    place.url,
    language,
    async (screen) => {
      for (const [width, height] of sizes) {
        await page.setViewportSize({ width, height });
        for (const theme of themes) {
          await wear(page, theme);
          const file = `${`${screen} ${language} ${theme} ${width}`.replaceAll(/[ ,]+/g, "-")}.jpg`;
          await page.screenshot({ path: `${folder}/${file}`, type: "jpeg", quality: 72 });
          pictures.push({ screen, language, theme, size: `${width} × ${height}`, file });
        }
      }
      await page.setViewportSize({ width: 1280, height: 800 });
      await wear(page, "light");
      const readme = forReadme[screen];
      if (language === "en" && readme) await page.screenshot({ path: `${folder}/${readme}.png` });
      for (const picture of installPictures.filter((one) => forInstall[screen] === one.screen)) {
        const { width, height } = picture;
        await page.setViewportSize({ width, height });
        const path = `${folder}/${pictureFile(picture, language)}`;
        await page.screenshot({ path, type: "jpeg", quality: 80 });
      }
      await page.setViewportSize({ width: 1280, height: 800 });
    },
    part,
  );
  await context.close();
}
await browser.close();
await place.close();

const screens = [...new Set(pictures.map(({ screen }) => screen))];
const sheet = screens.map(
  (screen) =>
    `<section><h2>${screen}</h2>${pictures
      .filter((picture) => picture.screen === screen)
      .map(
        ({ file, language, theme, size }) =>
          `<figure><a href="${file}"><img loading="lazy" src="${file}" alt=""></a><figcaption>${language} · ${theme} · ${size}</figcaption></figure>`,
      )
      .join("")}</section>`,
);
writeFileSync(
  `${folder}/index.html`,
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>Every screen of Gloveside</title><style>
body{font:16px/1.4 sans-serif;margin:2rem;background:#ddd}section{display:flex;flex-wrap:wrap;gap:1rem;align-items:end}
h2{width:100%}figure{margin:0}img{height:18rem;border:1px solid #888;background:#fff}</style><h1>Every screen</h1>${sheet.join("\n")}</html>`,
);
for (const name of Object.values(forReadme)) {
  try {
    copyFileSync(`${folder}/${name}.png`, `public/pictures/${name}.png`);
  } catch {
    // Another part or language was asked for.
  }
}
cpSync(`${folder}/pictures/install`, "public/pictures/install", { recursive: true });
console.log(`${pictures.length} pictures: ${folder}/index.html`);
