/** The words of the client's part of a record in English. */
export const personalEn = {
  title: "The client’s part",
  notes: "Spoken notes",
  client: {
    kept: (reference: string) => `Reference ${reference}, kept beside the chain.`,
    inHeader: (reference: string) =>
      `Reference ${reference}. It stands in the chain itself: this record was made before references were kept apart, and it can only be taken away with the whole record.`,
    erased: (_reference: string) => "The reference was erased.",
    notIncluded: (_reference: string) => "The reference is not on this device.",
    none: (_reference: string) => "No reference was given.",
  },
  note: (clock: string, seconds: number) => `Note at ${clock}, ${seconds} s`,
  noteErased: "erased",
  noteNotHere: "not in this record",
  erase: "Erase the client’s part",
  eraseNote: "Erase this note",
  sure: "This cannot be undone.",
  about:
    "The record goes on to verify, and says that this was erased. Files, papers and backups made before still hold it: make a new backup and destroy the old ones. The browser’s own files may hold a trace until it tidies them.",
  eraseNow: "Erase for good",
  keep: "Keep it",
  notErased: (why: string) => `Not erased: ${why}`,
};
