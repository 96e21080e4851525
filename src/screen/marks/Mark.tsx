/** The name mark: a leaf with the dots of a needle's track, growing. Drawn for this project; public/icons/mark.svg is the same. */
export function Mark({ size }: { size: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 48 48" aria-hidden="true">
      <path d="M6 4h22a14 14 0 0 1 14 14v26H20A14 14 0 0 1 6 30z" fill="var(--stencil)" />
      <g fill="var(--on-stencil)">
        <circle cx="14" cy="35" r="1.6" />
        <circle cx="18.5" cy="28.5" r="2.2" />
        <circle cx="24" cy="22.5" r="3" />
        <circle cx="31" cy="17" r="4.2" />
      </g>
    </svg>
  );
}
