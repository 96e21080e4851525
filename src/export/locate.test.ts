import { fc, test as property } from "@fast-check/vitest";
import { expect, test } from "vitest";
import { locate } from "./locate";

test.each([
  ['{"a":tru}', 8],
  ['{"a":1,}', 7],
  ["[1 2]", 3],
  ['["a\\x"]', 3],
  ['["never ends', 12],
  ["[1]]", 3],
  ['{"a" 1}', 5],
  ["{1:2}", 1],
  ["[01]", 2],
  ["[+1]", 1],
  ["", 0],
])("%s breaks off at %i", (text, at) => {
  expect(locate(text).at).toBe(at);
});

test("tells the entry that a record breaks off in", () => {
  expect(locate('{"entries":[{"n":1},{"n":2,"x":["entries",7]},{"n":!}]}').entry).toBe(3);
  expect(locate('{"header":[1,2,!]}').entry).toBeNull();
});

property.prop([fc.json()])("takes a text that JSON.parse takes to its end", (json) => {
  expect(locate(json).at).toBe(json.length);
});

property.prop([fc.json(), fc.nat()])(
  "breaks off where a control character stands, or at the token around it",
  (json, at) => {
    const place = at % (json.length + 1);
    const broken = locate(`${json.slice(0, place)}\u0001${json.slice(place)}`).at;
    // A number's sign or exponent and a \\u escape are taken whole or not at all: five characters at most.
    expect(broken).toBeGreaterThanOrEqual(Math.max(0, place - 5));
    expect(broken).toBeLessThanOrEqual(place);
  },
);
