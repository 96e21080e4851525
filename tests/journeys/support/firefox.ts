/** Debian's Firefox ESR, driven over WebDriver BiDi. */
import puppeteer, { type Browser } from "puppeteer-core";
import type { SoundDevice } from "./soundDevice";

/** Without a sound device its microphone is one that only beeps, and no audio context of it runs. */
export function openFirefox(device: SoundDevice | null): Promise<Browser> {
  return puppeteer.launch({
    browser: "firefox",
    executablePath: process.env.FIREFOX ?? "/usr/bin/firefox-esr",
    env: { ...process.env, ...device?.env },
    protocolTimeout: 300_000,
    extraPrefsFirefox: {
      "media.navigator.streams.fake": device === null,
      "media.navigator.permission.disabled": true,
      "media.autoplay.default": 0,
      // Debian's build gives notice of its version in a page of its own.
      "browser.startup.homepage_override.mstone": "ignore",
    },
  });
}
