/** The page's own language and theme, told to the browser: for hyphens, screen readers, form controls and styles. */
import type { Model } from "../screen/model";
import { languageOf } from "../screen/useModel";

export function wireLook(model: Model, page: HTMLElement = document.documentElement): void {
  const wishesContrast = matchMedia("(prefers-contrast: more)");
  const show = (): void => {
    const { theme } = model.settings.now;
    page.lang = languageOf(model.view, model.settings.now);
    page.dataset.theme = theme;
    page.dataset.contrast = theme === "contrast" || (theme === "device" && wishesContrast.matches) ? "more" : "usual";
  };
  show();
  wishesContrast.addEventListener("change", show);
  model.settings.subscribe(show);
  model.subscribe(show);
}
