/** Time: facts stand in order, and no more time counts as watched than the monotonic clock of one page life let by. */
import { breach, type Rule } from "./rule";

const beginsOnce: Rule = ({ fact, previous }) => {
  if ((previous === null) === (fact.type === "v1.SessionBegan")) return null;
  return breach("not-begun", "v1.SessionBegan first, and only then", fact.type);
};

const endsAtClose: Rule = ({ before, fact }) =>
  before.phase === "closed" ? breach("after-close", "nothing after v1.SessionClosed", fact.type) : null;

/** The facts of an event carry the number of facts before it. */
const causesInOrder: Rule = ({ before, fact }) => {
  if (fact.cause === before.cause || fact.cause === before.count) return null;
  return breach("cause-order", [before.cause, before.count], fact.cause);
};

const monotonic: Rule = ({ entry, previous }) => {
  if (!previous || previous.life !== entry.life || entry.monoMs >= previous.monoMs) return null;
  return breach("time-ran-back", `at least ${previous.monoMs} ms`, `${entry.monoMs} ms`);
};

/** A new page life has watched nothing of the gap: where a clock counts, the gap comes first. */
const gapsAreSeen: Rule = ({ entry, previous, before, fact }) => {
  if (!previous || previous.life === entry.life || fact.type === "v1.GapSeen") return null;
  const counting = Object.values(before.clocks).some((clock) => clock.state === "counting");
  return counting ? breach("gap-left-out", "v1.GapSeen", fact.type) : null;
};

export const timeRules: readonly Rule[] = [beginsOnce, endsAtClose, causesInOrder, monotonic, gapsAreSeen];

/** Ticks are up to this long, so that the first fact of a span may carry time from just before it. */
const slackMs = 5_000;

/** Adds up the time watched in each page life and holds it against the monotonic clock of that life. */
export function watchedWithinLife(): Rule {
  let life = "";
  let startMs = 0;
  let watchedMs = 0;
  return ({ entry, fact }) => {
    if (entry.life !== life) {
      life = entry.life;
      startMs = entry.monoMs;
      watchedMs = 0;
      if (fact.witnessedMs <= entry.monoMs) return null;
      return breach("time-not-watched", `at most ${entry.monoMs} ms`, `${fact.witnessedMs} ms`);
    }
    watchedMs += fact.witnessedMs;
    const mostMs = entry.monoMs - startMs + slackMs;
    return watchedMs <= mostMs ? null : breach("time-not-watched", `at most ${mostMs} ms`, `${watchedMs} ms`);
  };
}
