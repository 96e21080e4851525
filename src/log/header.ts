/** What a session's log opens with: all that a replay needs, the device's key, and the end of the session before. */
import { z } from "zod";
import { SessionInput } from "../session/sessionInput";
import { Digest } from "./canonical";
import { Uuidv7 } from "./uuidv7";

export const formatVersion = 1;

/** Ed25519 public key, 32 bytes as lower-case hex. */
export const PublicKey = z.string().regex(/^[0-9a-f]{64}$/, "64 lower-case hex digits");
/** Ed25519 signature, 64 bytes as lower-case hex. */
export const Signature = z.string().regex(/^[0-9a-f]{128}$/, "128 lower-case hex digits");

const Version = z.string().regex(/^\d+\.\d+\.\d+$/, "three numbers with dots");

export const Header = z.strictObject({
  format: z.literal("gloveside-record"),
  formatVersion: z.literal(formatVersion),
  session: Uuidv7,
  input: SessionInput,
  /** Version of the rules that decided; a verifier replays with the same. */
  rules: Version,
  /** SHA-256 of the phrase model that listened; null where no ear was used. */
  phraseModel: Digest.nullable(),
  appVersion: Version,
  /** The key of this device, under which every head is signed. */
  device: PublicKey,
  /** Last head of the station's session before, so that a missing session shows; null for the first. */
  previousHead: Digest.nullable(),
});

export type PublicKey = z.infer<typeof PublicKey>;
export type Signature = z.infer<typeof Signature>;
export type Header = z.infer<typeof Header>;
/** A header before the format's own marks are put on. */
export type Opening = Omit<Header, "format" | "formatVersion">;

export const asHeader = (opening: Opening): Header => ({ format: "gloveside-record", formatVersion, ...opening });
