/** After the browser has had the time to show what was drawn; at once in a tab that nobody looks at. */
export function onceShown(act: () => void): void {
  if (document.visibilityState === "hidden") act();
  else requestAnimationFrame(() => setTimeout(act, 0));
}
