/** Files that appear whole or not at all: written beside their place, synced, then renamed. */
import { mkdir, open, rename, rm, stat } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";

export type WrittenWhole = { readonly ok: true } | { readonly ok: false; readonly words: string };

/** @param folder Made where it is missing. Old files of the same names are replaced only when all the new ones are on disk. */
export async function writeWhole(folder: string, files: Readonly<Record<string, string>>): Promise<WrittenWhole> {
  const names = Object.keys(files);
  const beside = (name: string) => join(folder, `.${name}.${process.pid}.part`);
  try {
    await make(resolve(folder));
    for (const name of names) await writeSynced(beside(name), files[name] ?? "");
    for (const name of names) await rename(beside(name), join(folder, name));
    return { ok: true };
  } catch (problem) {
    await Promise.all(names.map((name) => rm(beside(name), { force: true }).catch(() => undefined)));
    return { ok: false, words: `${folder}: cannot be written (${codeOf(problem)})` };
  }
}

/** Folder by folder: Node's own recursive way never ends where a folder cannot be made, such as under /proc. */
async function make(folder: string): Promise<void> {
  const isThere = await stat(folder).catch(() => null);
  if (isThere) return;
  if (dirname(folder) !== folder) await make(dirname(folder));
  await mkdir(folder).catch((problem: NodeJS.ErrnoException) => {
    if (problem.code !== "EEXIST") throw problem;
  });
}

async function writeSynced(path: string, text: string): Promise<void> {
  const file = await open(path, "w");
  try {
    await file.writeFile(text, "utf8");
    await file.sync();
  } finally {
    await file.close();
  }
}

/** "ENOENT", or the message where there is no code. */
export const codeOf = (problem: unknown): string =>
  (problem as NodeJS.ErrnoException)?.code ?? (problem instanceof Error ? problem.message : String(problem));
