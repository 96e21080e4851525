/** The checker in a thread of its own: one protocol in, progress and a verdict out. */
import "./jitless";
import { checkProtocol, type Progress, type Verdict } from "../check/checkProtocol";
import type { Protocol } from "../session/protocol";

export type CheckReport =
  | { readonly type: "progress"; readonly so: Progress }
  | { readonly type: "verdict"; readonly verdict: Verdict };

declare const self: {
  postMessage(message: CheckReport): void;
  onmessage: ((event: MessageEvent<Protocol>) => void) | null;
};

self.onmessage = ({ data }) => {
  const onProgress = (so: Progress) => self.postMessage({ type: "progress", so });
  self.postMessage({ type: "verdict", verdict: checkProtocol(data, { onProgress }) });
};
