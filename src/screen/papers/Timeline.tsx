/** The session over time, drawn for paper: told apart in black and white, by pattern and place and never by colour. */
import { type Timeline as Laid, type Mark, type Span, ticksOf } from "../../export/timeline";
import styles from "./Timeline.module.css";
import type { PaperWords } from "./words";

interface Props {
  readonly timeline: Laid;
  readonly words: PaperWords;
  readonly nameOf: (id: string) => string;
  /** The number of a deviation by its entry. */
  readonly numberOf: ReadonlyMap<number, number>;
}

const width = 1000;
const left = 168;
const lane = 23;
const top = 26;

export function Timeline({ timeline, words, nameOf, numberOf }: Props) {
  const { fromMs, toMs, phases, hands, surfaces, marks } = timeline;
  const scale = (width - left - 8) / Math.max(1, toMs - fromMs);
  const x = (atMs: number) => left + (atMs - fromMs) * scale;
  const ticks = ticksOf(timeline);
  const rows = stacked(marks, x);
  const lanes = 2 + surfaces.length;
  const marksTop = top + lanes * lane + 6;
  const markRows = Math.max(1, ...rows.map(({ row }) => row + 1));
  const height = marksTop + markRows * 22 + 4;
  const w = words.record;
  const about = w.timelineAbout(clockOf(timeline, fromMs), clockOf(timeline, toMs), surfaces.length, marks.length);
  const bars = <T extends string>(spans: readonly Span<T>[], at: number) =>
    spans.map(({ what, fromMs: from, toMs: to }) => (
      <rect
        key={`${what}${from}`}
        className={styles[what]}
        fill={fills[what]}
        x={x(from)}
        y={top + at * lane + 4}
        width={Math.max(1.5, x(to) - x(from))}
        height={lane - 8}
      />
    ));
  return (
    <svg
      className={styles.timeline}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${w.timeline}. ${about}`}
    >
      <Patterns />
      {ticks.map(({ atMs, clock }) => (
        <g key={atMs}>
          <line className={styles.grid} x1={x(atMs)} x2={x(atMs)} y1={top - 4} y2={height} />
          <text className={styles.tick} x={x(atMs)} y={top - 9} textAnchor={x(atMs) > width - 30 ? "end" : "middle"}>
            {clock}
          </text>
        </g>
      ))}
      {[w.lanes.phases, w.lanes.hands, ...surfaces.map(({ surface }) => nameOf(surface))].map((name, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lanes do not move
        <g key={at}>
          <line className={styles.rule} x1={0} x2={width} y1={top + (at + 1) * lane} y2={top + (at + 1) * lane} />
          <text className={styles.name} x={0} y={top + at * lane + 16}>
            {shortly(name)}
          </text>
        </g>
      ))}
      {bars(phases, 0)}
      {phases.map(({ what, fromMs: from, toMs: to }) =>
        x(to) - x(from) > words.phases[what].length * 9.5 ? (
          <text key={from} className={styles.inside} x={(x(from) + x(to)) / 2} y={top + 16} textAnchor="middle">
            {words.phases[what]}
          </text>
        ) : null,
      )}
      {bars(hands, 1)}
      {surfaces.map(({ surface, states }, at) => (
        <g key={surface}>{bars(states, at + 2)}</g>
      ))}
      <text className={styles.name} x={0} y={marksTop + 16}>
        {w.lanes.marks}
      </text>
      {rows.map(({ mark, row }) => (
        <MarkAt key={mark.n} mark={mark} no={numberOf.get(mark.n)} x={x(mark.atMs)} y={marksTop + row * 22 + 10} />
      ))}
    </svg>
  );
}

/** By attribute: within a stylesheet the address of a pattern would be the stylesheet's own. */
const fills: Readonly<Record<string, string | undefined>> = {
  washed: "url(#paperDots)",
  glovedSoiled: "url(#paperHatch)",
  dry: "url(#paperCross)",
};

const shortly = (name: string): string => (name.length > 18 ? `${name.slice(0, 17)}…` : name);
const clockOf = ({ offsetMin }: Laid, atMs: number): string =>
  new Date(atMs + offsetMin * 60_000).toISOString().slice(11, 16);

/** Marks that would lie on each other go one under the other, four deep at the most. */
function stacked(marks: readonly Mark[], x: (atMs: number) => number) {
  const ends: number[] = [];
  return marks.map((mark) => {
    const at = x(mark.atMs);
    const free = ends.findIndex((end) => end <= at - 11);
    const row = free >= 0 ? free : Math.min(ends.length, 3);
    ends[row] = at + 11;
    return { mark, row };
  });
}

function MarkAt({ mark, no, x, y }: { mark: Mark; no: number | undefined; x: number; y: number }) {
  switch (mark.kind) {
    case "deviation":
      return (
        <g>
          <circle className={styles.deviation} cx={x} cy={y} r={10} />
          <text className={styles.no} x={x} y={y + 4.5} textAnchor="middle">
            {no}
          </text>
        </g>
      );
    case "refused":
      return <path className={styles.stroke} d={`M${x - 5} ${y - 5}l10 10m0 -10l-10 10`} />;
    case "gap":
      return <rect className={styles.gap} x={x - 6} y={y - 8} width={12} height={16} />;
    case "exposure":
      return <path className={styles.solid} d={`M${x} ${y - 10}l10 18h-20z`} />;
    case "event":
      return <path className={styles.event} d={`M${x} ${y - 7}l7 7l-7 7l-7 -7z`} />;
  }
}

function Patterns() {
  return (
    <defs>
      <pattern id="paperHatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="6" height="6" fill="#fff" />
        <rect width="2.4" height="6" fill="#000" />
      </pattern>
      <pattern id="paperDots" width="6" height="6" patternUnits="userSpaceOnUse">
        <rect width="6" height="6" fill="#fff" />
        <circle cx="3" cy="3" r="1.1" fill="#000" />
      </pattern>
      <pattern id="paperCross" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="7" height="7" fill="#fff" />
        <path d="M0 3.5h7M3.5 0v7" stroke="#000" strokeWidth="1.2" />
      </pattern>
    </defs>
  );
}

/** The key to the drawing: the same shapes, with their words. */
export function Legend({ words }: { words: PaperWords }) {
  const shapes = [
    "bare",
    "washed",
    "glovedClean",
    "glovedSoiled",
    "counting",
    "timeUp",
    "ready",
    "doubtful",
    "dry",
  ] as const;
  const kinds = ["deviation", "event", "refused", "gap", "exposure"] as const;
  return (
    <ul className={styles.legend}>
      {shapes.map((what) => (
        <li key={what}>
          <svg viewBox="0 0 34 18" aria-hidden="true">
            <rect className={styles[what]} fill={fills[what]} x="1" y="2" width="32" height="14" />
          </svg>
          {words.legend[what]}
        </li>
      ))}
      {kinds.map((kind) => (
        <li key={kind}>
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <MarkAt mark={{ kind, n: 0, atMs: 0 }} no={1} x={12} y={12} />
          </svg>
          {words.legend[kind]}
        </li>
      ))}
    </ul>
  );
}
