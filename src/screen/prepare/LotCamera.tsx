/** On the prepare screen, with bare hands: a code is held up, shown as read, and taken for one of the things. */
import { useEffect, useRef, useState } from "react";
import { type HeldUp, lookAt, nothingHeld } from "../../barcode/heldUp";
import { type Pack, type ReadCode, readPackCode } from "../../barcode/packCode";
import { CameraPicture, useCamera } from "../session/CameraPicture";
import { useShared } from "../useModel";
import type { LotDraft } from "./draft";
import styles from "./LotCamera.module.css";

interface Props {
  readonly items: readonly { readonly id: string; readonly name: string }[];
  readonly today: string;
  readonly take: (item: string, lot: LotDraft) => void;
}

export function LotCamera({ items, today, take }: Props) {
  const { words, camera } = useShared();
  const w = words.codes;
  const condition = useCamera();
  const [read, setRead] = useState<ReadCode | null>(null);
  const [taken, setTaken] = useState<string | null>(null);
  const held = useRef<HeldUp>(nothingHeld);
  const isOpen = condition === "on" || condition === "asking";
  useEffect(() => () => camera.close(), [camera]);

  const open = () => {
    held.current = nothingHeld;
    setRead(null);
    camera.open((codes, atMs) => {
      const { next, told } = lookAt(held.current, codes, atMs);
      held.current = next;
      if (!told) return;
      setRead(readPackCode(told, Number(today.slice(0, 4))));
      setTaken(null);
    });
  };
  const pack = read?.ok && read.pack.lot !== null && !isUnsure(read.pack) ? read.pack : null;
  return (
    <div className={styles.camera}>
      <button type="button" className={styles.open} onClick={() => (isOpen ? camera.close() : open())}>
        {isOpen ? w.stop : w.read}
      </button>
      {condition !== "off" && (
        <p role={isOpen ? "status" : "alert"}>{condition === "on" ? w.holdUp : w.camera[condition]}</p>
      )}
      {condition === "on" && <CameraPicture />}
      <div role="status" data-testid="code">
        {pack && (
          <p className={styles.says}>
            <b>{w.says(pack.lot ?? "", pack.expiry)}</b> <span>{w.retype}</span>
          </p>
        )}
        {taken !== null && <p>{w.taken(taken)}</p>}
      </div>
      <div role="alert">
        {read && !pack && <p className={styles.trouble}>{whyNot(read, w)}</p>}
        {pack?.expiry && pack.expiry < today && <p className={styles.trouble}>{w.past}</p>}
        {pack?.warnings.includes("month-only") && <p className={styles.trouble}>{w.monthOnly}</p>}
      </div>
      {pack && taken === null && (
        <div className={styles.items}>
          {items.map(({ id, name }) => (
            <button
              key={id}
              type="button"
              onClick={() => {
                take(id, { lot: pack.lot ?? "", expiry: pack.expiry ?? "", known: "scanned" });
                setTaken(name);
              }}
            >
              {w.takeFor(name)}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}

const isUnsure = (pack: Pack): boolean => pack.warnings.includes("separator-may-be-missing");

function whyNot(read: ReadCode, w: ReturnType<typeof useShared>["words"]["codes"]): string {
  if (!read.ok) return w.malformed;
  return isUnsure(read.pack) ? w.unsure : w.noLot;
}
