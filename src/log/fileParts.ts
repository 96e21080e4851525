/** The personal parts of one session in a file of their own, written anew as a whole: an erased part leaves no old line. */
import { open, readFile, rename } from "node:fs/promises";
import { dirname } from "node:path";
import type { PersonalPart } from "./personal";

/** @returns what is kept, not yet believed; nothing where there is no file. Throws SyntaxError. */
export async function readParts(path: string): Promise<PersonalPart[]> {
  try {
    return JSON.parse(await readFile(path, "utf8")) as PersonalPart[];
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
    throw error;
  }
}

/** All of them, durably, or as it was before. */
export async function writeParts(path: string, parts: readonly PersonalPart[]): Promise<void> {
  const ahead = `${path}.new`;
  const file = await open(ahead, "w");
  try {
    await file.writeFile(JSON.stringify(parts));
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(ahead, path);
  await syncFolder(dirname(path));
}

/** A new file's name is safe on disk only once its folder is synced too. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
