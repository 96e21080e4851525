/** An answer or a refusal. Expected trouble is a value with a closed code and one plain sentence, never an exception. */

export type Refusal<Code extends string> = {
  readonly ok: false;
  /** Closed set, for the program to act on. */
  readonly code: Code;
  /** One sentence, no line breaks, for a person. */
  readonly words: string;
};

export type Answer<T, Code extends string> = { readonly ok: true; readonly value: T } | Refusal<Code>;

export function answer<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function refuse<Code extends string>(code: Code, words: string): Refusal<Code> {
  return { ok: false, code, words };
}

/**
 * Text from outside, made safe to repeat inside one line: quoted, printable, at most 60 characters.
 * Control characters and line separators become spaces, so nothing a user typed can forge a second line.
 */
export function quoted(text: string): string {
  const printable = text.replace(/[\p{C}\u2028\u2029]/gu, " ");
  const short = printable.length > 60 ? `${printable.slice(0, 57)}...` : printable;
  return `"${short.toWellFormed()}"`;
}
