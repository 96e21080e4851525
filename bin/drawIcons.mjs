#!/usr/bin/env node
/** Draws the PNG icons from public/icons/mark.svg in Chromium: `npm run icons`. Same drawing, same pictures. */
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const folder = fileURLToPath(new URL("../public/icons/", import.meta.url));
const mark = readFileSync(`${folder}mark.svg`, "utf8");
/** Maskable icons are cut to a circle of 80 %, so the mark stands smaller on a ground of its own. */
const icons = [
  { name: "mark-192.png", size: 192, share: 1, ground: "transparent" },
  { name: "mark-512.png", size: 512, share: 1, ground: "transparent" },
  { name: "mark-maskable-512.png", size: 512, share: 0.62, ground: "#f3f1f8" },
];

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
for (const { name, size, share, ground } of icons) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const side = size * share;
  await page.setContent(
    `<body style="margin:0;height:${size}px;display:grid;place-items:center;background:${ground}">` +
      mark.replace("<svg ", `<svg width="${side}" height="${side}" `),
  );
  writeFileSync(`${folder}${name}`, await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
