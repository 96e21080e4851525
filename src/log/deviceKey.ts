/**
 * The key of this device: made once, kept by the browser in a database of its own, so that no backup of the log can
 * carry it along. Not extractable; clearing the site's data ends it, and a new key begins.
 */
import { openDevice } from "./deviceStore";
import type { Signer } from "./journal";
import { newKeyPair, signerOf } from "./signing";

/** Rejects where the store or WebCrypto's Ed25519 is missing: then nothing can be signed, and nothing should begin. */
export async function deviceSigner(name = "gloveside-key"): Promise<Signer> {
  const db = await openDevice(name, 1, { upgrade: (made) => void made.createObjectStore("keys") });
  try {
    const kept = (await db.get("keys", "device")) as CryptoKeyPair | undefined;
    if (kept) return await signerOf(kept);
    const made = await newKeyPair();
    // Two pages may arrive here at once: the first pair that is kept is the device's.
    const tx = db.transaction("keys", "readwrite", { durability: "strict" });
    const first = (await tx.store.get("device")) as CryptoKeyPair | undefined;
    if (!first) await tx.store.put(made, "device");
    await tx.done;
    return await signerOf(first ?? made);
  } finally {
    db.close();
  }
}
