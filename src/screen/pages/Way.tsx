/** The way to every page: a rail at the side where there is room, else behind one button. */
import { useEffect, useRef, useState } from "react";
import { Icon } from "../marks/Icon";
import { Mark } from "../marks/Mark";
import { useShared } from "../useModel";
import { addressOf, type PageId, pageGroups, pagesOf } from "./page";
import styles from "./Way.module.css";

export function Way({ open }: { open: PageId }) {
  const { words } = useShared();
  const [isUnfolded, setUnfolded] = useState(false);
  const rail = useRef<HTMLDivElement>(null);
  // On a lower screen than a tablet's the rail is longer than it is high.
  useEffect(() => {
    rail.current?.querySelector(`a[href="${addressOf(open)}"]`)?.scrollIntoView?.({ block: "nearest" });
  }, [open]);
  return (
    <>
      <nav className={styles.way} aria-label={words.pages.all}>
        <div className={styles.bar}>
          <a className={styles.name} href={addressOf("prepare")}>
            <Mark size={44} />
            Gloveside
          </a>
          <button type="button" className={styles.unfold} onClick={() => setUnfolded(true)}>
            {words.pages.all}
          </button>
        </div>
        <div ref={rail} className={styles.rail}>
          <Groups open={open} />
        </div>
      </nav>
      {isUnfolded && <Unfolded open={open} close={() => setUnfolded(false)} />}
    </>
  );
}

function Unfolded({ open, close }: { open: PageId; close: () => void }) {
  const { words } = useShared();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} className={styles.unfolded} onClose={close} aria-label={words.pages.all}>
      <button type="button" className={styles.fold} onClick={close}>
        {words.pages.close}
      </button>
      <div>
        <Groups open={open} follow={close} />
      </div>
    </dialog>
  );
}

function Groups({ open, follow }: { open: PageId; follow?: () => void }) {
  const { words } = useShared();
  const w = words.pages;
  return pageGroups.map((group) => {
    const pages = pagesOf(group);
    if (pages.length === 0) return null;
    return (
      <section key={group} className={styles.group} aria-label={w.groups[group]}>
        <p aria-hidden="true" className={styles.groupName}>
          {w.groups[group]}
        </p>
        <ul>
          {pages.map((id) => (
            <li key={id}>
              <a href={addressOf(id)} aria-current={id === open ? "page" : undefined} onClick={follow}>
                <Icon of={id} />
                {w.names[id]}
              </a>
              <p className={styles.lead}>{w.leads[id]}</p>
            </li>
          ))}
        </ul>
      </section>
    );
  });
}
