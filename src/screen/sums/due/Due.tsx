/** By the calendar: is the client old enough, what is due after an exposure, and how long records stay. */
import type { SumProps } from "../Sums";
import { Age } from "./Age";
import { Exposure } from "./Exposure";
import { Retention } from "./Retention";

export function Due({ view }: SumProps) {
  return (
    <>
      <Exposure zone={view.zone} />
      <Age zone={view.zone} />
      <Retention zone={view.zone} />
    </>
  );
}
