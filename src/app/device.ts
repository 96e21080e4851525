/** Small favours asked of the device: keep the screen on, keep the storage, hand over a file. Refusals are no harm. */

/** Keeps the screen lit while a session runs; browsers let go of it whenever the page is hidden, so it is asked again. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let isWanted = true;
  const ask = async () => {
    if (!isWanted || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
    try {
      lock = await navigator.wakeLock.request("screen");
    } catch {
      // Refused on a low battery; the session goes on.
    }
  };
  document.addEventListener("visibilitychange", ask);
  void ask();
  return () => {
    isWanted = false;
    document.removeEventListener("visibilitychange", ask);
    void lock?.release();
  };
}

/** Asks the browser not to clear this site's data when room gets short. */
export async function keepStorage(): Promise<void> {
  try {
    await navigator.storage?.persist?.();
  } catch {
    // Not offered here; the record is offered as a file at the close.
  }
}

/** Hands a text over as a file. */
export const saveFile = (name: string, text: string, type = "application/json"): void =>
  saveBlob(name, new Blob([text], { type }));

export function saveBlob(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
