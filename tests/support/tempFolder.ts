/** Folders of a test's own: they go when all tests of its file are through. Each file of tests has this module for itself. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

const made: string[] = [];

afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

/** At the top of a file or inside of a test. @param name part of its name, for whoever finds one of a run that was cut off. */
export function tempFolder(name: string): string {
  const folder = mkdtempSync(join(tmpdir(), `gloveside-${name}-`));
  made.push(folder);
  return folder;
}
