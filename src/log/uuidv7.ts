/** 128-bit ids that sort by the time they were made: UUID version 7, RFC 9562 section 5.7. */
import { z } from "zod";

/** Lower case only: one spelling for one id. */
export const Uuidv7 = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, "a UUID of version 7");
export type Uuidv7 = z.infer<typeof Uuidv7>;

const randomBytes = (): Uint8Array => crypto.getRandomValues(new Uint8Array(10));

/**
 * @param epochMs Wall-clock milliseconds since 1970, 0 to 2^48 - 1; only for sorting, never for a contact time.
 * @param random  10 bytes, of which 74 bits are used.
 */
export function uuidv7(epochMs: number = Date.now(), random: Uint8Array = randomBytes()): Uuidv7 {
  if (!Number.isInteger(epochMs) || epochMs < 0 || epochMs >= 2 ** 48)
    throw new RangeError("Time does not fit 48 bits.");
  if (random.length !== 10) throw new RangeError("Ten random bytes are needed.");
  const time = epochMs.toString(16).padStart(12, "0");
  const hex = (i: number, keep: number, set: number) => (((random[i] ?? 0) & keep) | set).toString(16).padStart(2, "0");
  const rest = Array.from({ length: 7 }, (_, i) => hex(i + 3, 0xff, 0)).join("");
  return `${time.slice(0, 8)}-${time.slice(8)}-${hex(0, 0x0f, 0x70)}${hex(1, 0xff, 0)}-${hex(2, 0x3f, 0x80)}${rest.slice(0, 2)}-${rest.slice(2)}`;
}

/** When the id was made, in wall-clock milliseconds since 1970. */
export const madeAtMs = (id: Uuidv7): number => Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
