/** A timeline lived again without sound: each phrase is heard, surely, a moment after its end. */
import type { ClipManifest } from "../announcements/clips";
import type { Label } from "./act";
import type { Opened } from "./opening";
import { enterRoom, type Room } from "./room";

const stepMs = 80;
/** How long the room is left open after the last phrase. */
const tailMs = 6_000;

/** @param hearingMs When the ear answers after the end of a phrase. */
export async function liveThrough(
  labels: readonly Label[],
  opened: Opened,
  manifest: ClipManifest,
  hearingMs = 240,
): Promise<Room> {
  const room = await enterRoom(opened, manifest);
  const passTo = async (untilMs: number): Promise<void> => {
    while (room.nowMs < untilMs) await room.pass(stepMs);
  };
  for (const { command, endMs } of labels) {
    await passTo(endMs + hearingMs);
    const { address } = opened.input;
    await room.hear({ kind: "understood", address, command, confidence: 1, permitted: true, atMs: room.nowMs });
  }
  await passTo(room.nowMs + tailMs);
  return room;
}
