/** A text as a QR code, drawn as one path with its quiet zone of four modules (ISO/IEC 18004). */
import { encode } from "uqr";

export function QrCode({ text, label, className }: { text: string; label: string; className?: string | undefined }) {
  // Quartile correction: paper gets folded and stained.
  const { data, size } = encode(text, { ecc: "Q", border: 4 });
  const dark = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return (
    <svg
      className={className}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={dark.join("")} fill="#000" />
    </svg>
  );
}
