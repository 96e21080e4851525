/** The page's own language and theme, told to the browser: for hyphens, screen readers, styles, and the installed app's names. */
import type { Model } from "../screen/model";
import { languageOf } from "../screen/useModel";
import { manifestFile } from "./manifestFiles";

export function wireLook(model: Model, page: HTMLElement = document.documentElement): void {
  const wishesContrast = matchMedia("(prefers-contrast: more)");
  const show = (): void => {
    const { theme, language } = model.settings.now;
    const isMore = theme === "contrast" || (theme === "device" && wishesContrast.matches);
    const manifest = document.querySelector('link[rel="manifest"]');
    if (manifest) put(manifest, "href", `./${manifestFile(language)}`);
    put(page, "lang", languageOf(model.view, model.settings.now));
    put(page, "data-theme", theme);
    put(page, "data-contrast", isMore ? "more" : "usual");
  };
  show();
  wishesContrast.addEventListener("change", show);
  model.settings.subscribe(show);
  model.subscribe(show);
}

/** Only where it differs: the model tells of every second, and an attribute of the root may concern every style. */
function put(element: Element, attribute: string, value: string): void {
  if (element.getAttribute(attribute) !== value) element.setAttribute(attribute, value);
}
