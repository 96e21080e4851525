/** Reads the phrase model that is shipped in public/voice, in Node. */
import { readFile } from "node:fs/promises";
import { type LoadedModel, loadModel } from "./loadModel";

/** @param folder Where model.json and model.bin lie; by default the repository's public/voice. */
export async function shippedModel(
  folder: URL = new URL("../../../public/voice/", import.meta.url),
): Promise<LoadedModel> {
  const [description, binary] = await Promise.all([
    readFile(new URL("model.json", folder), "utf8"),
    readFile(new URL("model.bin", folder)),
  ]);
  return loadModel(description, binary);
}
