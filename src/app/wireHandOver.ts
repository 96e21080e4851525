/** Handing over, wired: the verifier's worker, the list of trusted keys on this device, files, and the page's template. */

import { packed } from "../bundle/container";
import { fileName } from "../bundle/fileName";
import { type CheckedFile, checkFile, mostFileBytes } from "../export/checkFile";
import type { PublicKey } from "../log";
import type { HandOver } from "../screen/handOver";
import { type TrustedKey, TrustedKeys, withKey, withoutKey } from "../trust/trustedKeys";
import { saveFile } from "./device";
import type { VerifyAsked } from "./verify.worker";
import { watchedValue } from "./watchedValue";

const key = "gloveside-trusted";

export function wireHandOver(storage: Storage, base: string, deviceKey: PublicKey | null): HandOver {
  const trusted = watchedValue<readonly TrustedKey[]>(readList(storage));
  const keep = (list: readonly TrustedKey[]): boolean => {
    try {
      storage.setItem(key, JSON.stringify(list));
    } catch {
      return false;
    }
    trusted.set(list);
    return true;
  };
  return {
    deviceKey,
    trusted: {
      get now() {
        return trusted.now;
      },
      subscribe: trusted.subscribe,
    },
    async check(file) {
      if (file.size > mostFileBytes) return { ok: false, why: "tooLarge" };
      try {
        const bytes = new Uint8Array(await file.arrayBuffer());
        const keys = trusted.now.map((one) => one.key);
        return await inWorker({ bytes, trusted: deviceKey === null ? keys : [deviceKey, ...keys] });
      } catch {
        return { ok: false, why: "unreadable" };
      }
    },
    trust(name, typed) {
      const list = withKey(trusted.now, name, typed);
      if (!list.ok) return list.code;
      return keep(list.value) ? null : "notKept";
    },
    distrust: (one) => void keep(withoutKey(trusted.now, one)),
    save: saveFile,
    async savePage(name, recordText) {
      try {
        const answer = await fetch(new URL(fileName, base));
        const page = answer.ok ? packed(await answer.text(), recordText) : null;
        if (page !== null) saveFile(name, page, "text/html");
        return page !== null;
      } catch {
        return false;
      }
    },
  };
}

function readList(storage: Storage): readonly TrustedKey[] {
  try {
    const read = TrustedKeys.safeParse(JSON.parse(storage.getItem(key) ?? "[]"));
    return read.success ? read.data : [];
  } catch {
    return [];
  }
}

/** A large record takes a second or more; the screen stays awake meanwhile. */
async function inWorker(asked: VerifyAsked): Promise<CheckedFile> {
  let worker: Worker;
  try {
    worker = new Worker(new URL("./verify.worker.ts", import.meta.url), { type: "module", name: "verify" });
  } catch {
    return checkFile(asked.bytes, asked.trusted);
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
