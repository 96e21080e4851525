import { describe, expect, test } from "vitest";
import { commandIds } from "../intent/phrases";
import { readManifest } from "./manifest";

const usual = { allowed: commandIds, address: "station" } as const;
const read = (text: string) => readManifest(text, usual);

describe("the list of labelled recordings", () => {
  test("says what each file holds, in which condition, and what is listened for", () => {
    const manifest = read('file,phrase id,condition,allowed\na.wav,again,"buzz, 10",again undo\nb.wav,,talk,all\n');
    expect(manifest).toEqual({
      ok: true,
      bad: [],
      rows: [
        {
          file: "a.wav",
          said: "again",
          condition: "buzz, 10",
          allowed: ["again", "undo"],
          speaker: "a.wav",
          address: "station",
        },
        { file: "b.wav", said: null, condition: "talk", allowed: commandIds, speaker: "b.wav", address: "station" },
      ],
    });
  });

  test("takes speaker and address word where they are known", () => {
    const manifest = read("file,phrase,condition,speaker,address\na.wav,undo,clean,Ana,workbench\n");
    expect(manifest).toMatchObject({ rows: [{ speaker: "Ana", address: "workbench", allowed: commandIds }] });
  });

  test.each([
    ["a phrase that is none", "a.wav,dance,clean,all", '"dance" is not a phrase id'],
    ["something unknown among the allowed", "a.wav,again,clean,again dance", '"dance" in "allowed"'],
    ["a phrase that could never be heard", "a.wav,again,clean,undo", "again is said but not among the allowed"],
    ["no file", ",again,clean,all", "no file is named"],
  ])("leaves out a row with %s, and says why", (_, row, why) => {
    const manifest = read(`file,phrase,condition,allowed\n${row}\nb.wav,undo,clean,all\n`);
    expect(manifest).toMatchObject({
      ok: true,
      rows: [{ file: "b.wav" }],
      bad: [{ why: expect.stringContaining(why) }],
    });
  });

  test.each([
    ["a column is missing", "file,condition\na.wav,clean\n", 'no column "phrase"'],
    ["a quote is never closed", 'file,phrase,condition\n"a.wav,,\n', "not CSV"],
    ["there are no rows", "file,phrase,condition\n", "names no file"],
  ])("is refused whole where %s", (_, text, message) => {
    expect(read(text)).toEqual({ ok: false, message: expect.stringContaining(message) });
  });
});
