/** A value that tells when it has changed. */
export interface Watched<T> {
  readonly now: T;
  set(value: T): void;
  subscribe(listen: () => void): () => void;
}

export function watchedValue<T>(first: T): Watched<T> {
  let now = first;
  const listeners = new Set<() => void>();
  return {
    get now() {
      return now;
    },
    set(value) {
      now = value;
      for (const listen of [...listeners]) listen();
    },
    subscribe(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
  };
}
