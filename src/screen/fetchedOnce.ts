/** A part of the app that is fetched once, when it is first wanted. */
export interface FetchedOnce<T> {
  /** Null until it is here. */
  readonly now: T | null;
  /** The same promise each time. Rejects for good where the part cannot be had: browsers remember that, until a reload. */
  get(): Promise<T>;
}

export function fetchedOnce<T>(fetch: () => Promise<T>): FetchedOnce<T> {
  let now: T | null = null;
  let fetching: Promise<T> | null = null;
  return {
    get now() {
      return now;
    },
    get() {
      fetching ??= fetch().then((part) => {
        now = part;
        return part;
      });
      return fetching;
    },
  };
}
