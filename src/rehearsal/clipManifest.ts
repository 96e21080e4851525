/** Reads the list of recorded clips, so that a rehearsal keeps the time that the app's voice takes. */
import { readFile } from "node:fs/promises";
import { ClipManifest } from "../announcements/clips";

/** Rejects where the repository's public/clips is missing or damaged. */
export async function shippedClips(language = "en"): Promise<ClipManifest> {
  const file = new URL(`../../public/clips/${language}.json`, import.meta.url);
  return ClipManifest.parse(JSON.parse(await readFile(file, "utf8")));
}
