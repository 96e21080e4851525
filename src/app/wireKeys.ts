/** Keys and foot pedals during a session. A key on a focused button or field is that control's own. */
import { asksOutOfUse, keyMeaning } from "../screen/keys";
import type { App } from "./app";

export function wireKeys(app: App): void {
  document.addEventListener("keydown", (stroke) => {
    if (!app.keys.isOn || isControls(stroke)) return;
    if (asksOutOfUse(stroke, app.keys.letters)) {
      stroke.preventDefault();
      app.asks.tell({ type: "item.outOfUse" }, { by: "keyboard" });
      return;
    }
    const meant = keyMeaning(stroke, app.keys.letters);
    if (!meant) return;
    stroke.preventDefault();
    app.asks.command(meant.command, { by: meant.by });
  });
}

/** Enter and space press the button that has the focus; in a field every plain key is text. */
function isControls({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.matches("input, textarea, select")) return key.length === 1 || key === "Enter";
  return target.matches("button, summary, a") && (key === "Enter" || key === " ");
}
