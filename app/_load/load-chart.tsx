/**
 * Force over travel as a picture. Hidden from screen readers, since the table beside it has the same in numbers. Lines
 * differ by weight and dashes, never by colour.
 */

import { useFormats } from "#app/_parts/formats.tsx";
import type { Formats } from "#lib/formats/formats.ts";
import { toMm, toNewtons } from "#lib/formats/units.ts";
import { axisTicks } from "#lib/load/curve.ts";
import { plainNumber } from "#lib/plan/format.ts";
import styles from "./load.module.css";
import type { LineKind, LoadLine } from "./load-lines.ts";

const W = 420;
const H = 200;
const PLOT = { left: 40, right: W - 12, top: 26, bottom: H - 36 };

interface ChartProps {
  readonly lines: readonly LoadLine[];
  /** What the library asks for in the middle of the travel, N. */
  readonly asked: readonly [number, number] | undefined;
}

interface Scale {
  x(mm: number): number;
  y(newtons: number): number;
  /** In the reader's units. */
  readonly ticksX: readonly number[];
  readonly ticksY: readonly number[];
}

export function LoadChart({ lines, asked }: ChartProps) {
  const f = useFormats();
  const scale = scaleOf(lines, asked, f);
  const own = lines.find((line) => line.kind === "own");
  const first = own?.points[0]?.xMm ?? 0;
  const middleMm = (first + (own?.points.at(-1)?.xMm ?? 0)) / 2;
  return (
    <svg className={styles.chart} viewBox={`0 0 ${W} ${H}`} aria-hidden="true">
      <Axes scale={scale} f={f} />
      {/* The item before lies under the others, the item's own line on top. */}
      {[...lines].reverse().map((line) => line.points.length > 0 && <Line key={line.kind} line={line} scale={scale} />)}
      {asked && <Asked x={scale.x(middleMm)} from={scale.y(asked[0])} to={scale.y(asked[1])} />}
      {own && <circle className={styles.dot} cx={scale.x(middleMm)} cy={scale.y(own.newtons[1])} r="5" />}
    </svg>
  );
}

/** Ticks are round numbers of the reader's units. */
function scaleOf(lines: readonly LoadLine[], asked: ChartProps["asked"], f: Formats): Scale {
  const points = lines.flatMap((line) => line.points);
  const ticksY = axisTicks(Math.max(asked?.[1] ?? 0, ...points.map((p) => p.newtons)) / toNewtons(1, f.force));
  const ticksX = axisTicks(Math.max(10, ...points.map((p) => p.xMm)) / toMm(1, f.length), 6);
  const top = toNewtons(ticksY.at(-1) ?? 1, f.force);
  const end = toMm(ticksX.at(-1) ?? 1, f.length);
  return {
    x: (mm) => PLOT.left + ((PLOT.right - PLOT.left) * mm) / end,
    y: (newtons) => PLOT.bottom - ((PLOT.bottom - PLOT.top) * newtons) / top,
    ticksX,
    ticksY,
  };
}

function Axes({ scale, f }: { scale: Scale; f: Formats }) {
  return (
    <g className={styles.axes}>
      {scale.ticksY.map((n) => (
        <g key={n}>
          <line
            x1={PLOT.left}
            x2={PLOT.right}
            y1={scale.y(toNewtons(n, f.force))}
            y2={scale.y(toNewtons(n, f.force))}
            data-zero={n === 0 || undefined}
          />
          <text x={PLOT.left - 6} y={scale.y(toNewtons(n, f.force)) + 4} textAnchor="end">
            {plainNumber(n)}
          </text>
        </g>
      ))}
      {scale.ticksX.map((x) => (
        <text key={x} x={scale.x(toMm(x, f.length))} y={PLOT.bottom + 16} textAnchor="middle">
          {plainNumber(x)}
        </text>
      ))}
      <text x={PLOT.left - 6} y={12} textAnchor="end">
        {f.force}
      </text>
      <text x={PLOT.right} y={H - 5} textAnchor="end">
        travel of the carriage, {f.length}
      </text>
    </g>
  );
}

function Line({ line, scale }: { line: LoadLine; scale: Scale }) {
  const at = line.points.map((p) => `${scale.x(p.xMm).toFixed(1)} ${scale.y(p.newtons).toFixed(1)}`);
  const first = line.points[0]?.xMm ?? 0;
  const last = line.points.at(-1)?.xMm ?? 0;
  const ground = `L${scale.x(last).toFixed(1)} ${PLOT.bottom} L${scale.x(first).toFixed(1)} ${PLOT.bottom} Z`;
  return (
    <g className={styles.line} data-line={line.kind}>
      {line.kind === "before" && <path className={styles.ghost} d={`M${at.join(" L")} ${ground}`} />}
      <path d={`M${at.join(" L")}`} />
    </g>
  );
}

/** What the library asks for, as a bar with ends in the middle of the travel. */
function Asked({ x, from, to }: { x: number; from: number; to: number }) {
  return (
    <path className={styles.asked} d={`M${x - 6} ${from} H${x + 6} M${x - 6} ${to} H${x + 6} M${x} ${from} V${to}`} />
  );
}

/** A piece of a line as the table shows it. */
export function LineSample({ kind }: { kind: LineKind | "asked" }) {
  return (
    <svg className={styles.sample} viewBox="0 0 28 16" width="28" height="16" aria-hidden="true">
      {kind === "asked" ? (
        <path className={styles.asked} d="M8 2 H20 M8 14 H20 M14 2 V14" />
      ) : (
        <g className={styles.line} data-line={kind}>
          {kind === "before" && <path className={styles.ghost} d="M0 3 H28 V16 H0 Z" />}
          <path d={kind === "before" ? "M0 3 H28" : "M0 8 H28"} />
        </g>
      )}
    </svg>
  );
}
