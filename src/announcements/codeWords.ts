/** Letters as a lot is spelled: the code words of ICAO Annex 10, volume II, which do not change with the language. */
const words =
  "alfa bravo charlie delta echo foxtrot golf hotel india juliett kilo lima mike november oscar papa quebec romeo sierra tango uniform victor whiskey x-ray yankee zulu";

export const codeWords: Readonly<Record<string, string>> = Object.fromEntries(
  words.split(" ").map((word) => [word.charAt(0), word]),
);
