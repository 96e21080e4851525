import { breakdown } from "./breakdown";
import { conversation } from "./conversation";
import { exposure } from "./exposure";
import { session } from "./parts";
import { procedure } from "./procedure";
import { setUp } from "./setUp";
import { wetClocks } from "./wetClocks";

/**
 *   phase         setUp ──▶ procedure (at work ──finish──▶ dressing) ──▶ breakdown ──close──▶ closed
 *   conversation  open ⇄ naming · reason · read back
 *   wetClocks     one for each wet surface, counting only what was watched
 *   exposure      none ──accident──▶ first aid ──▶ resuming ──▶ none, or ended
 *
 * Hands, items, sharps and the clocks' counts are not states here: they are what is so, the fold of the facts.
 */
export const sessionMachine = session.createMachine({
  id: "session",
  type: "parallel",
  context: ({ input }) => input,
  states: {
    // First, since the end of an exposure is stated before the phase that follows it.
    exposure,
    phase: { initial: "setUp", states: { setUp, procedure, breakdown, closed: {} } },
    conversation,
    wetClocks,
  },
});
