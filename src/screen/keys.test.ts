import { describe, expect, it } from "vitest";
import { keyedCommands, keyMeaning, keysOf } from "./keys";

const stroke = (key: string, change: object = {}) => ({
  key,
  repeat: false,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  ...change,
});

describe("keys", () => {
  it("takes what page-turning pedals send as done and back, by pedal", () => {
    expect(keyMeaning(stroke("PageDown"), true)).toEqual({ command: "done", by: "pedal" });
    expect(keyMeaning(stroke("PageUp"), true)).toEqual({ command: "back", by: "pedal" });
  });

  it("gives the accident by key even with letters switched off", () => {
    expect(keyMeaning(stroke("F9"), false)).toEqual({ command: "accident", by: "pedal" });
    expect(keyMeaning(stroke("a"), false)).toBeNull();
  });

  it("reads a letter whatever its case", () => {
    expect(keyMeaning(stroke("Y"), true)).toEqual({ command: "yes", by: "keyboard" });
  });

  it("says done once for a pedal that is held down", () => {
    expect(keyMeaning(stroke("PageDown", { repeat: true }), true)).toBeNull();
  });

  it("leaves the browser's own shortcuts alone", () => {
    expect(keyMeaning(stroke("r", { ctrlKey: true }), true)).toBeNull();
  });

  it("lists a key for every keyed command", () => {
    expect(keyedCommands.filter((command) => keysOf(command, true).length === 0)).toEqual([]);
    expect(keysOf("done", true)).toEqual(["PageDown", "Enter", "Space"]);
  });
});
