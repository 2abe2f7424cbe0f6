/** METs over the class as steps, with the published limits as lines; hatched where no MET is known. */

import type { ClassIntensity, IntensityPart } from "#lib/intensity/intensity.ts";
import { axisTicks } from "#lib/load/curve.ts";
import { plainNumber } from "#lib/plan/format.ts";
import styles from "./load.module.css";
import { arcWords } from "./load-words.ts";

const W = 420;
const H = 136;
const PLOT = { left: 30, right: W - 66, top: 12, bottom: H - 22 };
const UNKNOWN = "unknown-met";
/** The axis reaches at least so far, so that the limit of vigorous is always shown. */
const LEAST_TOP_MET = 7;
const LIMITS = [
  { met: 3, word: "moderate" },
  { met: 6, word: "vigorous" },
] as const;

/** Where seconds and METs lie in the picture, px. */
interface Scale {
  x(seconds: number): number;
  y(met: number): number;
}

export function IntensityArc({ intensity }: { intensity: ClassIntensity }) {
  const { arc } = intensity;
  const total = arc.at(-1)?.to ?? 1;
  const top = Math.max(LEAST_TOP_MET, ...arc.map((part) => (part.met ?? 0) + 0.5));
  const scale: Scale = {
    x: (seconds) => PLOT.left + ((PLOT.right - PLOT.left) * seconds) / total,
    y: (met) => PLOT.bottom - ((PLOT.bottom - PLOT.top) * met) / top,
  };
  return (
    <svg className={styles.chart} viewBox={`0 0 ${W} ${H}`} role="img" aria-label={arcWords(intensity)}>
      <defs>
        <pattern id={UNKNOWN} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className={styles.hatch} d="M0 0 V6" />
        </pattern>
      </defs>
      {arc.map((part) => (
        <Bar key={part.from} part={part} scale={scale} />
      ))}
      <Axes scale={scale} minutes={total / 60} />
    </svg>
  );
}

/** The limits of moderate and vigorous across, the minutes along the foot. */
function Axes({ scale, minutes }: { scale: Scale; minutes: number }) {
  const ticks = axisTicks(minutes, 5).filter((minute) => minute <= minutes);
  return (
    <g className={styles.axes}>
      {LIMITS.map(({ met, word }) => (
        <g key={word}>
          <line x1={PLOT.left} x2={PLOT.right} y1={scale.y(met)} y2={scale.y(met)} data-zero="" />
          <text x={PLOT.left - 6} y={scale.y(met) + 4} textAnchor="end">
            {met}
          </text>
          <text x={PLOT.right + 6} y={scale.y(met) + 4}>
            {word}
          </text>
        </g>
      ))}
      <line x1={PLOT.left} x2={PLOT.right} y1={PLOT.bottom} y2={PLOT.bottom} data-zero="" />
      {ticks.map((minute) => (
        <text key={minute} x={scale.x(minute * 60)} y={PLOT.bottom + 16} textAnchor="middle">
          {plainNumber(minute)}
        </text>
      ))}
      <text x={PLOT.right + 16} y={PLOT.bottom + 16}>
        min
      </text>
      <text x={PLOT.left - 6} y={PLOT.top} textAnchor="end">
        MET
      </text>
    </g>
  );
}

function Bar({ part, scale: { x, y } }: { part: IntensityPart; scale: Scale }) {
  const known = part.met !== null;
  const top = y(part.met ?? LIMITS[0].met);
  return (
    <rect
      className={known ? styles.bar : styles.unknown}
      fill={known ? undefined : `url(#${UNKNOWN})`}
      data-rest={part.level === "rest" || undefined}
      x={x(part.from)}
      width={Math.max(0.5, x(part.to) - x(part.from))}
      y={top}
      height={y(0) - top}
    />
  );
}
