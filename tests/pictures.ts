/**
 * `npm run pictures`: every screen and state, in each theme, size and language, from the app as it is served in a real
 * Chromium, on one sheet to be looked at: out/pictures/index.html. The README's pictures and those of the manifest are
 * taken from the same walk.
 * `npm run pictures -- es pages` for one language or part.
 */
import { copyFileSync, cpSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { type SpokenLanguage, spokenLanguages } from "../src/announcements/phrasebooks";
import { installPictures, pictureFile } from "../src/app/manifestFiles";
import { icons } from "../src/screen/marks/icons";
import { everyScreen } from "./journeys/support/everyScreen";
import { openBrowser, serve } from "./journeys/support/place";
import { type Look, looks, sizes, wear } from "./journeys/support/wear";

const folder = "out/pictures";
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

interface Picture {
  readonly screen: string;
  readonly language: SpokenLanguage;
  readonly look: Look;
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
        for (const look of looks) {
          await wear(page, look);
          const file = `${`${screen} ${language} ${look} ${width}`.replaceAll(/[ ,]+/g, "-")}.jpg`;
          await page.screenshot({ path: `${folder}/${file}`, type: "jpeg", quality: 72 });
          pictures.push({ screen, language, look, size: `${width} × ${height}`, file });
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

/** The icons on one sheet, each with its name. */
async function drawIcons(): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 920, height: 340 } });
  const drawn = Object.entries(icons).map(
    ([name, path]) =>
      `<figure><svg width="48" height="48" viewBox="0 0 24 24" fill="none" stroke="#45189c" stroke-width="2" stroke-linecap="round" stroke-linejoin="round"><path d="${path}"/></svg><figcaption>${name}</figcaption></figure>`,
  );
  await page.setContent(
    `<style>body{margin:1rem;font:14px sans-serif;display:flex;flex-wrap:wrap;gap:.6rem}figure{margin:0;width:5.4rem;text-align:center}</style>${drawn.join("")}`,
  );
  await page.screenshot({ path: "public/pictures/icons.png" });
}
await drawIcons();
await browser.close();
await place.close();

/** Shown or hidden by what is ticked, without a script. */
const choices = (kind: "language" | "look" | "size"): string[] => [...new Set(pictures.map((one) => one[kind]))];
const idOf = (kind: string, value: string): string => `${kind}-${value.replaceAll(/[^a-z0-9]+/gi, "")}`;
const kinds = ["language", "look", "size"] as const;
const boxes = kinds.flatMap((kind) =>
  choices(kind).map((value) => `<label><input type="checkbox" checked id="${idOf(kind, value)}"> ${value}</label>`),
);
const hiding = kinds.flatMap((kind) =>
  choices(kind).map((value) => {
    const id = idOf(kind, value);
    return `body:has(#${id}:not(:checked)) figure.${id}{display:none}`;
  }),
);
const figure = ({ file, language, look, size }: Picture): string =>
  `<figure class="${idOf("language", language)} ${idOf("look", look)} ${idOf("size", size)}"><a href="${file}"><img loading="lazy" src="${file}" alt=""></a><figcaption>${language} · ${look} · ${size}</figcaption></figure>`;
const sheet = [...new Set(pictures.map(({ screen }) => screen))].map(
  (screen) =>
    `<section><h2>${screen}</h2>${pictures
      .filter((picture) => picture.screen === screen)
      .map(figure)
      .join("")}</section>`,
);
writeFileSync(
  `${folder}/index.html`,
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>Every screen of Gloveside</title><style>
body{font:16px/1.4 sans-serif;margin:2rem;background:#ddd}section{display:flex;flex-wrap:wrap;gap:1rem;align-items:end}
h2{width:100%}figure{margin:0}img{height:18rem;border:1px solid #888;background:#fff}
nav{position:sticky;top:0;background:#ddd;padding:.5rem 0;display:flex;flex-wrap:wrap;gap:1rem}${hiding.join("")}</style>
<h1>Every screen</h1><nav>${boxes.join("")}</nav>${sheet.join("\n")}</html>`,
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
