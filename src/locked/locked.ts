/**
 * A text locked with a passphrase: PBKDF2-HMAC-SHA-256 makes the key, AES-256-GCM locks and seals. All parameters stand
 * in the file, in the clear, and are sealed with it (as additional data), so that another program can open it and
 * nobody can weaken it unseen. Without the passphrase nothing can be got back, by nobody.
 */
import { z } from "zod";

/** What may be locked; a text locked for one thing does not open as another. */
export const purposes = ["exposure-report", "backup", "records"] as const;

/** Work for each guess. OWASP Password Storage Cheat Sheet: 600,000 rounds for HMAC-SHA-256 (seen 2023 to 2026). */
export const rounds = 600_000;
/** A hostile file may ask for work without end; ten times ours is where we stop. */
const mostRounds = 6_000_000;
export const shortestPassphrase = 8;

const base64 = z.base64();

export const Locked = z.strictObject({
  format: z.literal("gloveside-locked"),
  formatVersion: z.literal(1),
  purpose: z.enum(purposes),
  kdf: z.strictObject({
    name: z.literal("PBKDF2-HMAC-SHA-256"),
    rounds: z.number().int().min(1).max(mostRounds),
    /** 16 random bytes (NIST SP 800-132 section 5.1: at least 128 bits). */
    salt: base64.length(24),
  }),
  cipher: z.strictObject({
    name: z.literal("AES-256-GCM"),
    /** 12 random bytes, new for each locking (NIST SP 800-38D section 8.2.2). */
    iv: base64.length(16),
  }),
  /** Cipher text and its 16-byte tag. */
  body: base64,
});
export type Locked = z.infer<typeof Locked>;
export type Purpose = Locked["purpose"];

export type LockedTrouble = {
  ok: false;
  code: "passphrase-short" | "not-a-lock" | "newer-format" | "other-purpose" | "wrong-passphrase";
  message: string;
};
const no = (code: LockedTrouble["code"], message: string): LockedTrouble => ({ ok: false, code, message });

/**
 * @param passphrase eight characters or more; compared after Unicode NFC, so that two keyboards agree.
 * @param work rounds of PBKDF2; fewer only in tests.
 */
export async function lock(
  purpose: Purpose,
  passphrase: string,
  bytes: Uint8Array,
  work = rounds,
): Promise<{ ok: true; locked: Locked } | LockedTrouble> {
  if ([...passphrase].length < shortestPassphrase) {
    return no("passphrase-short", `A passphrase has ${shortestPassphrase} characters or more.`);
  }
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const open: Omit<Locked, "body"> = {
    format: "gloveside-locked",
    formatVersion: 1,
    purpose,
    kdf: { name: "PBKDF2-HMAC-SHA-256", rounds: work, salt: toBase64(salt) },
    cipher: { name: "AES-256-GCM", iv: toBase64(iv) },
  };
  const key = await keyFrom(passphrase, salt, work);
  const body = await crypto.subtle.encrypt({ name: "AES-GCM", iv, additionalData: inTheClear(open) }, key, own(bytes));
  return { ok: true, locked: { ...open, body: toBase64(new Uint8Array(body)) } };
}

/** @param file what was locked, as it was read from anywhere; it is not believed. Never throws. */
export async function unlock(
  purpose: Purpose,
  passphrase: string,
  file: unknown,
): Promise<{ ok: true; bytes: Uint8Array<ArrayBuffer> } | LockedTrouble> {
  const version = (file as { formatVersion?: unknown } | null)?.formatVersion;
  if (typeof version === "number" && version > 1) {
    return no("newer-format", `Locked by a newer app (format ${version}); open it with that one.`);
  }
  const read = Locked.safeParse(file);
  if (!read.success) return no("not-a-lock", "This is not a file that was locked here.");
  const { body, ...open } = read.data;
  if (open.purpose !== purpose) return no("other-purpose", `This is a locked ${open.purpose}, not a ${purpose}.`);
  try {
    const key = await keyFrom(passphrase, fromBase64(open.kdf.salt), open.kdf.rounds);
    const iv = fromBase64(open.cipher.iv);
    const plain = await crypto.subtle.decrypt(
      { name: "AES-GCM", iv, additionalData: inTheClear(open) },
      key,
      fromBase64(body),
    );
    return { ok: true, bytes: new Uint8Array(plain) };
  } catch {
    // AES-GCM cannot tell the two apart, and should not.
    return no("wrong-passphrase", "The passphrase does not open it, or it was altered.");
  }
}

const own = (bytes: Uint8Array): Uint8Array<ArrayBuffer> => new Uint8Array(bytes);
const utf8 = new TextEncoder();

/** The parameters in one fixed order, whatever the order in the file. */
const inTheClear = ({ format, formatVersion, purpose, kdf, cipher }: Omit<Locked, "body">): Uint8Array<ArrayBuffer> =>
  own(utf8.encode([format, formatVersion, purpose, kdf.name, kdf.rounds, kdf.salt, cipher.name, cipher.iv].join("\n")));

/** The key cannot be taken out. */
export async function keyFrom(passphrase: string, salt: Uint8Array<ArrayBuffer>, work: number): Promise<CryptoKey> {
  const secret = own(utf8.encode(passphrase.normalize("NFC")));
  const raw = await crypto.subtle.importKey("raw", secret, "PBKDF2", false, ["deriveKey"]);
  const how = { name: "PBKDF2", hash: "SHA-256", salt, iterations: work };
  return crypto.subtle.deriveKey(how, raw, { name: "AES-GCM", length: 256 }, false, ["encrypt", "decrypt"]);
}

const chunk = 0x8000;
export function toBase64(bytes: Uint8Array): string {
  let binary = "";
  for (let at = 0; at < bytes.length; at += chunk) binary += String.fromCharCode(...bytes.subarray(at, at + chunk));
  return btoa(binary);
}

/** The text must have passed `Locked`; throws where it is no base64. */
export const fromBase64 = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text), (char) => char.charCodeAt(0));
