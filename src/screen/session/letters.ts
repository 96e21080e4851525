/** How large the one thing to do may stand. Pure. */

/** `longWord`: one that would not fit an upright screen whole. `long`: a studio's own, longer than fills the screen. */
export type Letters = "usual" | "longWord" | "long";

const longestUsual = 40;
const longestWord = 12;

export function lettersFor(text: string): Letters {
  if (text.length > longestUsual) return "long";
  return text.split(/\s/).some((word) => word.length > longestWord) ? "longWord" : "usual";
}

/** Letters in a line at the sizes that are largest, on a tablet on its side, where height is short. */
const inALine = { shown: 15, said: 38 } as const;

/** How many lines a text takes at the most, words kept whole. */
export function linesOf(text: string, as: keyof typeof inALine): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(/\s+/)) {
    if (used > 0 && used + 1 + word.length > inALine[as]) {
      lines += 1;
      used = word.length;
    } else used += (used > 0 ? 1 : 0) + word.length;
  }
  return lines;
}
