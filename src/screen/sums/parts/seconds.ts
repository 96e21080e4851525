/** A short time as people write it: "5 min", "90 s", "1 min 30 s", "1:30". A bare number says too little and is not read. */

/** @returns whole seconds, or null. */
export function readSeconds(text: string): number | null {
  const plain = text.normalize("NFKC").trim().toLowerCase().replace(",", ".");
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(plain);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const parts = /^(?:(\d{1,3}(?:\.\d{1,2})?) ?(?:min|minutes?|m))? ?(?:(\d{1,4}) ?(?:s|sec|secs|seconds?))?\.?$/.exec(
    plain,
  );
  if (!parts || (parts[1] === undefined && parts[2] === undefined)) return null;
  const seconds = Number(parts[1] ?? 0) * 60 + Number(parts[2] ?? 0);
  return Number.isInteger(Number(seconds.toFixed(6))) ? Math.round(seconds) : null;
}

/** "5 min", "1 min 30 s", "45 s". */
export function showSeconds(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = seconds % 60;
  return [minutes > 0 && `${minutes} min`, (rest > 0 || minutes === 0) && `${rest} s`].filter(Boolean).join(" ");
}

/** A whole number that is not negative, or null: "12", " 7 ". */
export const readWhole = (text: string): number | null => (/^\s*\d{1,7}\s*$/.test(text) ? Number(text) : null);
