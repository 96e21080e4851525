/** Preparing this device for work without a network: a deliberate step, with its progress and what went wrong. */
import { useSyncExternalStore } from "react";
import { useShared } from "../useModel";
import styles from "./Device.module.css";

const megabyte = 1_000_000;

/** @param isQuiet shows nothing once the device is ready. */
export function Device({ isQuiet = false }: { isQuiet?: boolean }) {
  const { words, device, asks, language } = useShared();
  const now = useSyncExternalStore(device.subscribe, () => device.now);
  const w = words.device;
  const size = (bytes: number): string =>
    new Intl.NumberFormat(language, { style: "unit", unit: "megabyte", maximumFractionDigits: 1 }).format(
      bytes / megabyte,
    );
  if (isQuiet && (now.at === "ready" || now.at === "checking")) return null;
  return (
    <div className={styles.device} data-testid="device" data-at={now.at}>
      <div role="status">
        {now.at === "checking" && <p>{w.checking}</p>}
        {now.at === "ready" && <p>{w.ready}</p>}
        {now.at === "cannot" && <p>{w.cannot}</p>}
        {now.at === "bare" && <p>{w.bare(size(now.missingBytes))}</p>}
        {now.at === "failed" && <p className={styles.trouble}>{w.failed[now.why]}</p>}
        {now.at === "fetching" && <p>{w.fetching}</p>}
      </div>
      {now.at === "fetching" && (
        <div className={styles.progress}>
          <progress value={now.doneBytes} max={now.allBytes} aria-label={w.fetching} />
          <span>{w.of(size(now.doneBytes), size(now.allBytes))}</span>
        </div>
      )}
      {(now.at === "bare" || now.at === "failed") && (
        <button type="button" onClick={() => asks.prepareDevice()}>
          {w.prepare}
        </button>
      )}
    </div>
  );
}
