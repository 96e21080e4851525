/** The page's own language and theme, told to the browser: for hyphens, screen readers, styles, and the installed app's names. */
import type { Model } from "../screen/model";
import { languageOf } from "../screen/useModel";
import { manifestFile } from "./manifestFiles";

export function wireLook(model: Model, page: HTMLElement = document.documentElement): void {
  const wishesContrast = matchMedia("(prefers-contrast: more)");
  const show = (): void => {
    const { theme, language } = model.settings.now;
    const manifest = document.querySelector('link[rel="manifest"]');
    if (manifest && manifest.getAttribute("href") !== `./${manifestFile(language)}`)
      manifest.setAttribute("href", `./${manifestFile(language)}`);
    page.lang = languageOf(model.view, model.settings.now);
    page.dataset.theme = theme;
    page.dataset.contrast = theme === "contrast" || (theme === "device" && wishesContrast.matches) ? "more" : "usual";
  };
  show();
  wishesContrast.addEventListener("change", show);
  model.settings.subscribe(show);
  model.subscribe(show);
}
