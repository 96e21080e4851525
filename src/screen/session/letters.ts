/** How large the one thing to do may stand. Pure. */

/** `longWord`: one that would not fit an upright screen whole. `long`: a studio's own, longer than fills the screen. */
export type Letters = "usual" | "longWord" | "long";

const longestUsual = 40;
const longestWord = 12;

export function lettersFor(text: string): Letters {
  if (text.length > longestUsual) return "long";
  return text.split(/\s/).some((word) => word.length > longestWord) ? "longWord" : "usual";
}
