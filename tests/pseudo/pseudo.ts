/**
 * A language that nobody speaks, made of English: each text between brackets, its vowels marked, two fifths longer. What
 * stands on a screen without brackets did not come out of a phrasebook; what is cut off would be cut off in German.
 */

const marked: Readonly<Record<string, string>> = { a: "á", e: "ë", i: "ï", o: "ö", u: "ü" };

/** Longer by 40 %, as the W3C's note "Text size in translation" gives for texts of this length (from memory). */
export function pseudoText(text: string): string {
  if (!/\p{L}/u.test(text)) return text;
  const filling = "olim "
    .repeat(Math.ceil((text.length * 0.4) / 5))
    .slice(0, Math.ceil(text.length * 0.4))
    .trim();
  return `⟦${text.replace(/[aeiou]/g, (vowel) => marked[vowel] ?? vowel)} ${filling}⟧`;
}

/** @returns a book of the same shape. What a function was given stands within its brackets, as it does in a sentence. */
export function pseudo<Book>(book: Book): Book {
  if (typeof book === "string") return pseudoText(book) as Book;
  if (typeof book === "function") return ((...given: unknown[]) => pseudo(book(...given))) as Book;
  if (Array.isArray(book)) return book.map(pseudo) as Book;
  if (typeof book !== "object" || book === null) return book;
  return Object.fromEntries(Object.entries(book).map(([key, part]) => [key, pseudo(part)])) as Book;
}
