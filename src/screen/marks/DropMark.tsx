/**
 * A wet clock's shape. It is told apart without colour: a drop that fills; dashed while doubtful; struck through when
 * dry; full with a question when the time is up; a leaf with a tick when ready.
 */
import type { Face } from "../session/clockFace";

const drop = "M24 3C24 3 8 20 8 30a16 16 0 0 0 32 0C40 20 24 3 24 3z";
const tall = 43;

export function DropMark({ face, filled, id }: { face: Face; filled: number; id: string }) {
  const level = 3 + tall * (1 - filled);
  const colour = face === "dry" || face === "doubtful" || face === "reapply" ? "var(--dry)" : "var(--wet)";
  if (face === "ready") {
    return (
      <svg viewBox="0 0 48 48" aria-hidden="true">
        <path d="M6 4h22a14 14 0 0 1 14 14v26H20A14 14 0 0 1 6 30z" fill="var(--soap)" />
        <path d="M14 25l8 8 13-17" fill="none" stroke="var(--sheet)" strokeWidth="5" strokeLinecap="round" />
      </svg>
    );
  }
  return (
    <svg viewBox="0 0 48 48" aria-hidden="true">
      <clipPath id={`level-${id}`}>
        <rect x="0" y={level} width="48" height={48 - level} />
      </clipPath>
      <path d={drop} fill="var(--sheet)" />
      <path d={drop} fill={colour} clipPath={`url(#level-${id})`} />
      <path
        d={drop}
        fill="none"
        stroke={colour}
        strokeWidth="3"
        strokeDasharray={face === "doubtful" ? "5 4" : undefined}
      />
      {(face === "timeUp" || face === "doubtful") && (
        <text
          x="24"
          y="38"
          textAnchor="middle"
          fontSize="24"
          fontWeight="800"
          fill={face === "timeUp" ? "var(--sheet)" : "var(--dry)"}
        >
          ?
        </text>
      )}
      {face === "dry" && <path d="M9 41L39 11" stroke="var(--dry)" strokeWidth="4" strokeLinecap="round" />}
      {face === "reapply" && (
        <path d="M24 21v18M15 30h18" stroke="var(--sheet)" strokeWidth="8" strokeLinecap="round" />
      )}
      {face === "reapply" && <path d="M24 21v18M15 30h18" stroke="var(--ink)" strokeWidth="4" strokeLinecap="round" />}
    </svg>
  );
}
