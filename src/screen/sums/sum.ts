/** Which of the studio's screens is open: it stands in the address, so that "back" goes back and a reload stays. */
import { useSyncExternalStore } from "react";

export const sums = ["mixing", "shelf", "steriliser", "hands", "due", "place"] as const;
export type SumId = (typeof sums)[number];

const subscribe = (listen: () => void) => {
  addEventListener("hashchange", listen);
  return () => removeEventListener("hashchange", listen);
};

export const useSum = (): SumId | null =>
  useSyncExternalStore(subscribe, () => sums.find((sum) => location.hash === `#${sum}`) ?? null);
