/**
 * The bound everything rests on: one pair of hands, jobs with a first moment, hands-on time and a follow-up wait, and
 * leave to interrupt. Jackson's preemptive schedule is optimal for that easier problem, so no real plan ends sooner.
 * Carlier, "The one-machine sequencing problem", European Journal of Operational Research 11 (1982).
 */

/** Jobs in plain arrays so that the search can reuse one set of them; seconds. Only the first `count` are used. */
export class Jobs {
  count = 0;
  readonly head: Float64Array;
  readonly hands: Float64Array;
  readonly tail: Float64Array;

  constructor(most: number) {
    this.head = new Float64Array(most);
    this.hands = new Float64Array(most);
    this.tail = new Float64Array(most);
  }

  /** Keeps the jobs sorted by head; they mostly arrive so. */
  add(head: number, hands: number, tail: number): void {
    let at = this.count++;
    for (; at > 0 && (this.head[at - 1] ?? 0) > head; at--) {
      this.head[at] = this.head[at - 1] ?? 0;
      this.hands[at] = this.hands[at - 1] ?? 0;
      this.tail[at] = this.tail[at - 1] ?? 0;
    }
    this.head[at] = head;
    this.hands[at] = hands;
    this.tail[at] = tail;
  }

  /** Earliest moment by which every job and its follow-up can be over, in seconds. Uses up the jobs. */
  readySec(): number {
    const { count, head, hands, tail } = this;
    let ready = 0;
    let now = 0;
    let known = 0;
    let left = count;
    while (left > 0) {
      let next = -1;
      let longest = -1;
      for (let at = 0; at < known; at++)
        if ((hands[at] ?? -1) >= 0 && (tail[at] ?? 0) > longest) {
          longest = tail[at] ?? 0;
          next = at;
        }
      if (next < 0) now = Math.max(now, head[known] ?? 0);
      const coming = known < count ? (head[known] ?? 0) : Number.POSITIVE_INFINITY;
      if (next >= 0) {
        const rest = hands[next] ?? 0;
        if (now + rest <= coming) {
          now += rest;
          hands[next] = -1;
          left--;
          if (now + longest > ready) ready = now + longest;
        } else {
          hands[next] = rest - (coming - now);
          now = coming;
        }
      }
      while (known < count && (head[known] ?? 0) <= now) known++;
    }
    this.count = 0;
    return ready;
  }
}
