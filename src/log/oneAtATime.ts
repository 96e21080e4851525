/** Lets asynchronous acts happen one after the other, in the order they were asked for. */
export function oneAtATime(): <T>(act: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (act) => {
    const mine = last.then(act, act);
    last = mine.catch(() => undefined);
    return mine;
  };
}
