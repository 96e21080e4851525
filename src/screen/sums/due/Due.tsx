/** By the calendar: is the client old enough, what is due after an exposure, and how long records stay. */
import type { PageProps } from "../../pages/screens";
import { Age } from "./Age";
import { Exposure } from "./Exposure";
import { Retention } from "./Retention";

export function Due({ view }: PageProps) {
  return (
    <>
      <Exposure zone={view.zone} />
      <Age zone={view.zone} />
      <Retention zone={view.zone} />
    </>
  );
}
