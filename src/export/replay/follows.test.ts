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
