/** What the prepare screen opens with: protocols, unfinished sessions, the remembered form, what was left unready. */
import type { PrepareView, Unfinished } from "../screen/model";
import { todayIn, zoneHere } from "./calendar";
import type { DeviceMemory } from "./deviceMemory";
import type { Log } from "./wireLog";

type Given = Pick<PrepareView, "protocols" | "trouble" | "ear" | "hasPractice" | "offline">;

export async function prepareView(
  { journal, left }: Pick<Log, "journal" | "left">,
  memory: DeviceMemory,
  given: Given,
): Promise<PrepareView> {
  const [listed, carried] = await Promise.all([journal.unfinished(), left()]);
  const unread = !listed.ok ? listed : !carried.ok ? carried : null;
  const zone = zoneHere();
  const unfinished = listed.ok
    ? listed.sessions.map(({ session, header: { input }, entries, client }): Unfinished => {
        const { name } = input.protocol;
        return {
          session,
          clientReference: "reference" in client ? client.reference : null,
          protocolName: name[input.language] ?? name.en,
          entries,
        };
      })
    : [];
  return {
    at: "prepare",
    unfinished,
    importing: { at: "nothing" },
    busy: false,
    lastHeard: null,
    soundCheck: null,
    speaking: null,
    draft: memory.draft(),
    today: todayIn(zone, Date.now()),
    zone,
    carriedOver: carried.ok ? carried.left : {},
    loss: memory.loss(),
    ...given,
    trouble: given.trouble ?? (unread && { code: unread.code, message: unread.message }),
  };
}
