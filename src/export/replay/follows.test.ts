import { fc, test as property } from "@fast-check/vitest";
import { expect } from "vitest";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { newSigner } from "../../log";
import { anyEvent } from "../samples/anyEvents";
import { live } from "../samples/lived";
import { follows } from "./follows";

const input = inputFor(smallProtocol);
const signer = await newSigner();

property.prop([fc.array(anyEvent, { maxLength: 120, size: "max" })], { numRuns: 60 })(
  "finds nothing wrong with any session that the chart itself decided",
  async (events) => {
    const { kept } = await live(input, events, signer);
    expect(follows(input, kept.entries)).toMatchObject({ ok: true });
  },
);

const leftBefore = inputFor(smallProtocol, { carriedOver: ["chair", "cup", "needle"] });
const slip = { type: "event.reported", event: "touched", item: "bottle" } as const;
/** Soiled gloves, so that what they touch is soiled. */
const torn = { type: "event.reported", event: "tornGlove" } as const;

property.prop(
  [fc.array(anyEvent, { maxLength: 60, size: "max" }), fc.array(anyEvent, { maxLength: 80, size: "max" })],
  {
    numRuns: 40,
  },
)("nor with one that begins with what was left unready, or that a slip adds steps to", async (before, after) => {
  const { kept } = await live(leftBefore, [...before, torn, slip, ...after], signer);
  expect(follows(leftBefore, kept.entries)).toMatchObject({ ok: true });
});
