/** Teaching in a thread of its own, with a network of its own. The first message opens it; each later one is answered once. */
import { loadModel } from "../network/loadModel";
import { readNegatives } from "./negativesFile";
import { Teacher } from "./teacher";
import type { TeachAnswer, TeachOrder } from "./teachPort";

declare const self: {
  postMessage(message: TeachAnswer): void;
  onmessage: ((event: MessageEvent<TeachOrder>) => void) | null;
};

let teacher: Promise<Teacher | null> = Promise.resolve(null);

const file = async (name: string, folder: string) => {
  const response = await fetch(new URL(name, folder));
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
};
const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

async function open({ modelFolder, negativesFolder, address }: Extract<TeachOrder, { type: "open" }>) {
  try {
    const [description, binary, about, bytes] = await Promise.all([
      file("model.json", modelFolder),
      file("model.bin", modelFolder),
      file("negatives.json", negativesFolder),
      file("negatives.bin", negativesFolder),
    ]);
    const loaded = await loadModel(text(description), binary);
    if (!loaded.ok) return null;
    // Without them the thresholds could not be set again: nothing is taught rather than something that acts on talk.
    const negatives = readNegatives(text(about), bytes, loaded.model.digest);
    return negatives && new Teacher(loaded.model, address, negatives);
  } catch {
    return null;
  }
}

self.onmessage = async ({ data }) => {
  if (data.type === "open") teacher = open(data);
  const teaches = await teacher;
  if (teaches === null) return self.postMessage({ type: "unusable" });
  if (data.type === "open") self.postMessage({ type: "ready" });
  else if (data.type === "take") {
    const { command, ownWords, samples, rateHz } = data;
    self.postMessage({ type: "taken", answer: teaches.take(command, ownWords, samples, rateHz) });
    teaches.study();
  } else {
    const began = performance.now();
    const own = teaches.learn(data.consentAt, data.taughtAt);
    self.postMessage({ type: "learnt", own, tookMs: Math.round(performance.now() - began) });
  }
};
