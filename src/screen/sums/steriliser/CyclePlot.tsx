/** A cycle drawn: the curve, the band it must keep to, the hold that counts, and where it broke. Every part has a word. */
import type { CyclePlot as Plot } from "../../../steriliser/plot";
import { useSumWords } from "../useSumWords";
import styles from "./CyclePlot.module.css";

const margin = { left: 104, right: 40, top: 40, bottom: 48 };

export function CyclePlot({ plot }: { plot: Plot }) {
  const w = useSumWords().steriliser.plot;
  const { width, height, band, hold } = plot;
  const box = `${-margin.left} ${-margin.top} ${width + margin.left + margin.right} ${height + margin.top + margin.bottom}`;
  return (
    <svg className={styles.plot} viewBox={box} role="img" aria-label={plot.description} data-testid="plot">
      <rect className={styles.band} x={band.x} y={band.y} width={band.width} height={band.height} />
      {hold && <rect className={styles.hold} x={hold.x} y={hold.y} width={hold.width} height={hold.height} />}
      {plot.temperatureTicks.map(({ at, label }) => (
        <g key={label}>
          <line className={styles.grid} x1={0} x2={width} y1={at} y2={at} />
          <text className={styles.tick} x={-10} y={at} textAnchor="end" dominantBaseline="middle">
            {label}
          </text>
        </g>
      ))}
      {plot.timeTicks.map(({ at, label }) => (
        <text key={label} className={styles.minute} x={at} y={height + 32} textAnchor="middle">
          {label}
        </text>
      ))}
      <line className={styles.axis} x1={0} x2={0} y1={0} y2={height} />
      <line className={styles.axis} x1={0} x2={width} y1={height} y2={height} />
      <polyline className={styles.curve} points={plot.curve} />
      {plot.breaks.slice(0, 20).map(({ x, label }) => (
        <g key={`${x} ${label}`} className={styles.break}>
          <title>{label}</title>
          <line x1={x} x2={x} y1={0} y2={height} />
          <path d={`M${x - 7} -14l14 14M${x + 7} -14l-14 14`} />
        </g>
      ))}
      {hold && (
        <g className={styles.bracket}>
          <path d={`M${hold.x} ${hold.y - 4}v-10h${hold.width}v10`} />
          <text x={hold.x + hold.width / 2} y={hold.y - 18} textAnchor="middle">
            {w.hold}
          </text>
        </g>
      )}
      <text className={styles.name} x={6} y={band.y + band.height + 24}>
        {w.band}
      </text>
    </svg>
  );
}
