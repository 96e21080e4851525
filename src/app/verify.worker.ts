/** The verifier in a thread of its own: a file's bytes and the trusted keys in, the verdicts out. */
import "./jitless";
import { type CheckedFile, checkFile } from "../export/checkFile";

export type VerifyAsked = { readonly bytes: Uint8Array; readonly trusted: readonly string[] };

declare const self: {
  postMessage(message: CheckedFile): void;
  onmessage: ((event: MessageEvent<VerifyAsked>) => void) | null;
};

self.onmessage = async ({ data }) => self.postMessage(await checkFile(data.bytes, { trusted: data.trusted }));
