/** The words of the archive in English: finding sessions, and keeping what this device holds. */

export const archiveEn = {
  records: {
    ask: "What to look for",
    askHint: "Leave empty what does not matter. A lot is found by its beginning; dashes and spaces do not count.",
    lot: "Lot",
    product: "Product",
    client: "Client reference",
    from: "From",
    to: "To",
    deviation: "Deviation",
    any: "any",
    clear: "Ask for everything",
    found: "Sessions",
    searching: "Looking…",
    none: "No session on this device answers this. Another device may have one.",
    count: (count: number) => (count === 1 ? "1 session" : `${count} sessions`),
    more: (shown: number, count: number) =>
      `The newest ${shown} of ${count} are shown. The table and the list hold all.`,
    csv: "Save as a table (CSV)",
    print: "Print the recall list",
    mend: "Make the index again",
    mended: (count: number) =>
      count === 1 ? "Made again from the log: 1 session." : `Made again from the log: ${count} sessions.`,
    sealed: "sealed",
    unfinished: "unfinished",
    ofAnother: "kept by another device",
    noLots: "no lot entered",
    deviations: (count: number) => (count === 0 ? "no deviation" : count === 1 ? "1 deviation" : `${count} deviations`),
    sheet: {
      title: "Recall list",
      asked: (asked: string) => `Asked for: ${asked}`,
      everything: "every session",
      made: (day: string) => `Made on ${day}, from the records of this device alone.`,
      caution:
        "A list to begin with. The label, the maker’s recall notice, local rules and a clinician say what must be done, and for whom.",
      columns: {
        day: "Day",
        client: "Client",
        station: "Station",
        artist: "Artist",
        lots: "Lots",
        told: "Told on, by",
      },
    },
  },
};
