/** An icon in the colour of the words it stands beside. */
import { type IconId, icons } from "./icons";

export function Icon({ of }: { of: IconId }) {
  return (
    <svg
      width="24"
      height="24"
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentcolor"
      strokeWidth="2"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
      data-icon={of}
    >
      <path d={icons[of]} />
    </svg>
  );
}
