/** The personal parts of sessions on this device: read, and erased on request. */
import { notesOf } from "../export/notes";
import { clientIn, type Journal } from "../log";
import type { Beside } from "../screen/personal/besideModel";

export const wireBeside = (journal: Journal): Beside => ({
  async read(session) {
    const read = await journal.read(session);
    if (!read.ok) return null;
    const { header, entries, personal } = read.kept;
    return { client: clientIn(header, personal), notes: notesOf(entries, personal) };
  },
  async erase(session, places) {
    const done = await journal.erase(session, places);
    return done.ok ? null : done.code;
  },
});
