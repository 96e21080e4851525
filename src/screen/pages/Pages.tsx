/** Between sessions, with bare hands: the way to every page, and the page that is open. */
import { Activity } from "react";
import type { PrepareView } from "../model";
import { Prepare } from "../prepare/Prepare";
import { OtherPage } from "./OtherPage";
import styles from "./Pages.module.css";
import { usePage } from "./usePage";
import { Way } from "./Way";

export function Pages({ view }: { view: PrepareView }) {
  const page = usePage();
  return (
    <div className={styles.frame}>
      <Way open={page} />
      <div className={styles.page}>
        {/* Out of sight, but the form keeps what was typed. */}
        <Activity mode={page === "prepare" ? "visible" : "hidden"}>
          <Prepare view={view} />
        </Activity>
        {page !== "prepare" && <OtherPage key={page} page={page} view={view} />}
      </div>
    </div>
  );
}
