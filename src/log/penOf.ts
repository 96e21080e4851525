/** The keeper's pen over a journal's writer: stamps what is kept with wall time, monotonic time and page life. */
import type { Way } from "../../machines/session/vocabulary";
import type { Pen } from "../session/keeper";
import { knownBy } from "./entry";
import type { Writer } from "./journal";
import type { Uuidv7 } from "./uuidv7";
import { wallTime } from "./wallTime";

export type LogClock = {
  /** Which page life this is; made once, when the page or process begins. */
  life: Uuidv7;
  /** Monotonic milliseconds since that life began; for a recording, its own time. */
  monoMs(): number;
  /** Milliseconds since 1970 by the wall clock. */
  wallMs(): number;
  /** Minutes east of UTC; the device's own where it is left out. */
  offsetMin?(): number;
};

export const penOf = (writer: Writer, clock: LogClock): Pen => ({
  append: (facts, way: Way) =>
    writer.append(facts, {
      at: wallTime(clock.wallMs(), clock.offsetMin?.()),
      monoMs: Math.max(0, Math.round(clock.monoMs())),
      life: clock.life,
      way,
      known: knownBy(way),
    }),
});
