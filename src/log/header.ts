/** What a session's log opens with: all that a replay needs, the device's key, and the end of the session before. */
import { z } from "zod";
import { SessionInput } from "../session/sessionInput";
import { Digest } from "./canonical";
import { Uuidv7 } from "./uuidv7";

export const formatVersion = 2;

/** Ed25519 public key, 32 bytes as lower-case hex. */
export const PublicKey = z.string().regex(/^[0-9a-f]{64}$/, "64 lower-case hex digits");
/** Ed25519 signature, 64 bytes as lower-case hex. */
export const Signature = z.string().regex(/^[0-9a-f]{128}$/, "128 lower-case hex digits");

const Version = z.string().regex(/^\d+\.\d+\.\d+$/, "three numbers with dots");

const common = {
  format: z.literal("gloveside-record"),
  session: Uuidv7,
  /** Version of the rules that decided; a verifier replays with the same. */
  rules: Version,
  /** SHA-256 of the phrase model that listened; null where no ear was used. */
  phraseModel: Digest.nullable(),
  appVersion: Version,
  /** The key of this device, under which every head is signed. */
  device: PublicKey,
  /** Last head of the station's session before, so that a missing session shows; null for the first. */
  previousHead: Digest.nullable(),
};

/** Format 1, which is only read: the client's reference stands in the chain and cannot be taken out of it. */
const First = z.strictObject({
  ...common,
  formatVersion: z.literal(1),
  input: SessionInput.required({ clientReference: true }),
});

const Second = z.strictObject({
  ...common,
  formatVersion: z.literal(formatVersion),
  input: SessionInput.omit({ clientReference: true }),
  /** Commitment to the client's reference, which is kept beside the chain; null where none was given. */
  client: Digest.nullable(),
});

export const Header = z.discriminatedUnion("formatVersion", [First, Second]);

export type PublicKey = z.infer<typeof PublicKey>;
export type Signature = z.infer<typeof Signature>;
export type Header = z.infer<typeof Header>;
