import { fc, test as property } from "@fast-check/vitest";
import { expect, test } from "vitest";
import { madeAtMs, Uuidv7, uuidv7 } from "./uuidv7";

// RFC 9562 Appendix A.6: 2022-02-22T14:22:22.00-05:00, rand_a CC3, rand_b 18C4DC0C0C07398F.
test("makes the example of RFC 9562 Appendix A.6", () => {
  const random = new Uint8Array([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
  expect(uuidv7(0x017f22e279b0, random)).toBe("017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
  expect(madeAtMs("017f22e2-79b0-7cc3-98c4-dc0c0c07398f")).toBe(Date.parse("2022-02-22T14:22:22.00-05:00"));
});

property.prop([fc.integer({ min: 0, max: 2 ** 48 - 1 }), fc.uint8Array({ minLength: 10, maxLength: 10 })])(
  "always carries version 7, variant 10 and its time",
  (epochMs, random) => {
    const id = uuidv7(epochMs, random);
    expect(Uuidv7.safeParse(id).success).toBe(true);
    expect(madeAtMs(id)).toBe(epochMs);
  },
);

property.prop([fc.integer({ min: 0, max: 2 ** 48 - 2 })])("sorts by time", (epochMs) => {
  expect(uuidv7(epochMs) < uuidv7(epochMs + 1)).toBe(true);
});

test("does not repeat itself within a millisecond", () => {
  const ids = Array.from({ length: 2000 }, () => uuidv7(1_764_052_800_000));
  expect(new Set(ids).size).toBe(2000);
});

test.each([[-1], [2 ** 48], [1.5], [Number.NaN]])("refuses the time %d", (epochMs) => {
  expect(() => uuidv7(epochMs)).toThrow(RangeError);
});

test.each([
  ["017F22E2-79B0-7CC3-98C4-DC0C0C07398F", "upper case"],
  ["017f22e2-79b0-4cc3-98c4-dc0c0c07398f", "version 4"],
  ["017f22e2-79b0-7cc3-c8c4-dc0c0c07398f", "another variant"],
])("does not take %s: %s", (text) => {
  expect(Uuidv7.safeParse(text).success).toBe(false);
});
