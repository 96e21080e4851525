/** How long and how safely things stay here: the browser's promise, a locked backup and its restore, keys that are trusted. */

import { addressOf } from "../pages/page";
import type { PageProps } from "../pages/screens";
import { Section } from "../prepare/Field";
import acts from "../sums/parts/Acts.module.css";
import { useShared } from "../useModel";
import { BackUp } from "./BackUp";
import { LockRecords } from "./LockRecords";
import { Promised } from "./Promised";
import { Restore } from "./Restore";
import { TrustedKeys } from "./TrustedKeys";
import { archiveWords } from "./words";

export function KeepingPage(_props: PageProps) {
  const { keeping, language } = useShared();
  const { keeping: w } = archiveWords(language);
  if (!keeping) return <p role="alert">{w.nothing}</p>;
  return (
    <>
      <Promised keeping={keeping} />
      <BackUp keeping={keeping} />
      <Restore keeping={keeping} />
      {keeping.vault && <LockRecords vault={keeping.vault} />}
      <TrustedKeys />
      <Section title={w.time} hint={w.timeHint}>
        <div className={acts.acts}>
          <a className={acts.act} href={addressOf("due")}>
            {w.toDue}
          </a>
          <a className={acts.act} href={addressOf("place")}>
            {w.toPlace}
          </a>
        </div>
      </Section>
    </>
  );
}
