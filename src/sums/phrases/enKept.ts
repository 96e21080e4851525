/** Why the studio's store kept nothing, in English. */
export const keptEn = {
  wrongShape: (row: string) => `${row} does not have the shape of one.`,
  unreadable: (row: string) => `${row} cannot be read and is not written over.`,
  noRoom: "The device has no room left. Nothing was kept.",
  noAnswer: (name: string) => `The studio's store does not answer. Nothing was kept. ${name}`.trim(),
};
