/** One page writes a session, by Web Locks: a lock ends with its page, even one that is killed. */

/** @param locks Undefined where the browser has none; then every hold succeeds, and the store's pen fences alone. */
export function sessionLocks(locks: LockManager | undefined) {
  const held = new Map<string, () => void>();
  return {
    /** @returns false while another page, or this one, holds the session. */
    hold: (session: string): Promise<boolean> => {
      if (held.has(session)) return Promise.resolve(false);
      if (!locks) return Promise.resolve(true);
      return new Promise((resolve, reject) => {
        locks
          .request(`gloveside-session-${session}`, { ifAvailable: true }, (lock) => {
            if (!lock) return resolve(false);
            const released = new Promise<void>((release) => held.set(session, release));
            resolve(true);
            return released;
          })
          .catch(reject);
      });
    },
    letGo: (session: string): void => {
      held.get(session)?.();
      held.delete(session);
    },
  };
}
