/** Handing over, wired: the verifier's worker, files, and the page's template. */
import { fileName } from "../bundle/fileName";
import type { CheckedFile } from "../export/checkFile";
import type { RecordFile } from "../export/recordFile";
import type { PublicKey } from "../log";
import type { HandOver } from "../screen/handOver";
import { saveFile } from "./device";
import type { VerifyAsked } from "./verify.worker";

export function wireHandOver(base: string, deviceKey: PublicKey | null): HandOver {
  let ofAccident: RecordFile | null = null;
  return {
    deviceKey,
    async check(file, keys) {
      try {
        const { mostFileBytes } = await import("../export/checkFile");
        if (file.size > mostFileBytes) return { ok: false, why: "tooLarge" };
        const bytes = new Uint8Array(await file.arrayBuffer());
        return await inWorker({ bytes, trusted: deviceKey === null ? keys : [deviceKey, ...keys] });
      } catch {
        return { ok: false, why: "unreadable" };
      }
    },
    save: saveFile,
    async savePage(name, recordText) {
      try {
        const answer = await fetch(new URL(fileName, base));
        const { packed } = await import("../bundle/container");
        const page = answer.ok ? packed(await answer.text(), recordText) : null;
        if (page !== null) saveFile(name, page, "text/html");
        return page !== null;
      } catch {
        return false;
      }
    },
    ofAccident: {
      get now() {
        return ofAccident;
      },
      put(record) {
        ofAccident = record;
      },
    },
  };
}

/** A large record takes a second or more; the screen stays awake meanwhile. */
async function inWorker(asked: VerifyAsked): Promise<CheckedFile> {
  let worker: Worker;
  try {
    worker = new Worker(new URL("./verify.worker.ts", import.meta.url), { type: "module", name: "verify" });
  } catch {
    const { checkFile } = await import("../export/checkFile");
    return checkFile(asked.bytes, { trusted: asked.trusted });
  }
  return new Promise<CheckedFile>((resolve) => {
    const end = (checked: CheckedFile) => {
      worker.terminate();
      resolve(checked);
    };
    worker.addEventListener("message", ({ data }: MessageEvent<CheckedFile>) => end(data));
    worker.addEventListener("error", () => end({ ok: false, why: "unreadable" }));
    worker.postMessage(asked);
  });
}
