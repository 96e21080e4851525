/** The steriliser log: tests that are due, a cycle and its verdict, what is in the log, and the packs that came of it. */
import type { PageProps } from "../../pages/screens";
import { CycleEntry } from "./CycleEntry";
import { CycleLog } from "./CycleLog";
import { Packs } from "./Packs";
import { Tests } from "./Tests";

export function SteriliserScreen({ view }: PageProps) {
  return (
    <>
      <Tests zone={view.zone} />
      <CycleEntry zone={view.zone} />
      <CycleLog zone={view.zone} />
      <Packs zone={view.zone} />
    </>
  );
}
