/** Which page is open, as the address says it. */
import { useSyncExternalStore } from "react";
import { type PageId, pageAt } from "./page";

const subscribe = (listen: () => void) => {
  addEventListener("hashchange", listen);
  return () => removeEventListener("hashchange", listen);
};

export const usePage = (): PageId => useSyncExternalStore(subscribe, () => pageAt(location.hash).id);

/** What follows the page's name in the address: one record of many, a protocol to change. */
export const usePageRest = (): string | null => useSyncExternalStore(subscribe, () => pageAt(location.hash).rest);
