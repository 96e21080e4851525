/** The hands as a shape: an outline bare, with drops washed, filled and cuffed gloved, hatched when the gloves are soiled. */
import type { Hands } from "../../session/station";

const hand =
  "M13 27V12.5a2.2 2.2 0 0 1 4.4 0V21h.8V8.8a2.2 2.2 0 0 1 4.4 0V21h.8V10.2a2.2 2.2 0 0 1 4.4 0V22h.8v-8a2.1 2.1 0 0 1 4.2 0v15c0 5-3.6 9-9.6 9h-2.4c-4 0-6-1.700-8-4.800L6.600 24.400a2.100 2.100 0 0 1 3.400-2.400z";

export function HandMark({ hands }: { hands: Hands }) {
  const gloved = hands === "glovedClean" || hands === "glovedSoiled";
  return (
    <svg width="44" height="48" viewBox="0 0 40 48" aria-hidden="true">
      <defs>
        <pattern id="soil" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="5" height="5" fill="var(--dry-wash)" />
          <rect width="2.4" height="5" fill="var(--dry)" />
        </pattern>
      </defs>
      <path
        d={hand}
        fill={hands === "glovedClean" ? "var(--soap)" : hands === "glovedSoiled" ? "url(#soil)" : "none"}
        stroke={hands === "glovedSoiled" ? "var(--dry)" : gloved ? "var(--soap)" : "var(--ink)"}
        strokeWidth="2"
        strokeLinejoin="round"
      />
      {gloved && (
        <path
          d="M14 41h18v5H14z"
          fill={hands === "glovedClean" ? "var(--soap)" : "url(#soil)"}
          stroke={hands === "glovedClean" ? "var(--soap)" : "var(--dry)"}
          strokeWidth="1.500"
        />
      )}
      {hands === "washed" && (
        <path
          d="M5 14c0-2.500 2.500-4 2.500-6 0 2 2.500 3.500 2.500 6a2.500 2.500 0 0 1-5 0zM34 41c0-2 2-3.200 2-5 0 1.800 2 3 2 5a2 2 0 0 1-4 0z"
          fill="var(--wet)"
        />
      )}
    </svg>
  );
}
