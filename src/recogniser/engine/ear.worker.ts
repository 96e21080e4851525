/** The ear in a thread of its own. The first message names the folder of the phrase model; then orders, as they come. */
import { loadModel } from "../network/loadModel";
import { earHere } from "./earHere";
import type { EarOrder, EarPort } from "./port";

declare const self: {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent<{ readonly modelFolder: string } | EarOrder>) => void) | null;
};

let port: EarPort | null = null;

async function fetchModel(folder: string) {
  try {
    const [description, binary] = await Promise.all(
      ["model.json", "model.bin"].map(async (name) => {
        const response = await fetch(new URL(name, folder));
        if (!response.ok) throw new Error(`${name}: ${response.status}`);
        return response.arrayBuffer();
      }),
    );
    return await loadModel(new TextDecoder().decode(description), new Uint8Array(binary ?? new ArrayBuffer()));
  } catch (error) {
    self.postMessage({ type: "unusable", code: "unreadable", message: `the phrase model cannot be fetched: ${error}` });
    return new Promise<never>(() => {});
  }
}

self.onmessage = ({ data }) => {
  if ("modelFolder" in data) {
    port = earHere(fetchModel(data.modelFolder));
    port.onReport((report) => self.postMessage(report));
  } else port?.tell(data);
};
