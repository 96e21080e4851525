/** Between the page and the worker that learns: one answer to each order. */
import type { AddressWord, CommandId } from "../../intent/phrases";
import type { OwnVoice } from "./ownVoice";
import type { TakeAnswer } from "./teacher";

export type TeachOrder =
  | {
      readonly type: "open";
      readonly modelFolder: string;
      readonly negativesFolder: string;
      readonly address: AddressWord;
    }
  | {
      readonly type: "take";
      readonly command: CommandId;
      readonly ownWords: boolean;
      readonly samples: Float32Array;
      readonly rateHz: number;
    }
  | { readonly type: "learn"; readonly consentAt: string; readonly taughtAt: string };

export type TeachAnswer =
  | { readonly type: "ready" }
  /** No model, or stored negatives that are not of this model. */
  | { readonly type: "unusable" }
  | { readonly type: "taken"; readonly answer: TakeAnswer }
  | { readonly type: "learnt"; readonly own: OwnVoice | null; readonly tookMs: number };

export interface TeachPort {
  ask(order: TeachOrder): Promise<TeachAnswer>;
  close(): void;
}

export function workerTeacher(): TeachPort {
  const worker = new Worker(new URL("./teach.worker.ts", import.meta.url), { type: "module", name: "teach" });
  const waiting: ((answer: TeachAnswer) => void)[] = [];
  worker.addEventListener("message", ({ data }: MessageEvent<TeachAnswer>) => waiting.shift()?.(data));
  worker.addEventListener("error", () => {
    for (const answer of waiting.splice(0)) answer({ type: "unusable" });
  });
  return {
    ask: (order) =>
      new Promise((answer) => {
        waiting.push(answer);
        worker.postMessage(order, order.type === "take" ? [order.samples.buffer as ArrayBuffer] : []);
      }),
    close: () => worker.terminate(),
  };
}
