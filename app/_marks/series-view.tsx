"use client";
import { useFormats } from "#app/_parts/formats.tsx";
import { dateOfMoment } from "#lib/formats/dates.ts";
/** Marks over time as small multiples: for each criterion a row of steps, one for each time, the newest at the right. */
import type { MarkSeries } from "#lib/progress/series.ts";
import { levelWords } from "./marks-words.ts";
import styles from "./series.module.css";

/** More would be too narrow to tell apart; earlier ones are in the list. */
const MOST_POINTS = 12;
const STEP = { wide: 14, high: 8, gap: 4 } as const;

export function SeriesView({ series }: { readonly series: readonly MarkSeries[] }) {
  return (
    <ul className={styles.series}>
      {series.map((one) => (
        <li key={one.criterion} className={styles.one}>
          <h3>{one.name}</h3>
          <Steps {...one} />
          <Newest {...one} />
        </li>
      ))}
    </ul>
  );
}

/** Each level is one step up; what is not reached is drawn as a line, so that the height says "of how many". */
function Steps({ name, levels, points }: MarkSeries) {
  const f = useFormats();
  const shown = points.slice(-MOST_POINTS);
  const height = levels * STEP.high;
  const width = shown.length * (STEP.wide + STEP.gap);
  const words = shown.map(({ at, level, of }) => `${dateOfMoment(at, f)}: ${levelWords(level, of)}`).join("; ");
  return (
    <svg
      className={styles.steps}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={`${name}: ${words}`}
    >
      {shown.map(({ marksId, level, of }, i) => {
        const x = i * (STEP.wide + STEP.gap);
        const steps = Array.from({ length: of }, (_, below) => below + 1);
        return steps.map((step) => (
          <rect
            key={`${marksId} ${step}`}
            x={x + 0.5}
            y={height - step * STEP.high + 1.5}
            width={STEP.wide - 1}
            height={STEP.high - 2}
            data-reached={step <= level || undefined}
          />
        ));
      })}
    </svg>
  );
}

function Newest({ points }: MarkSeries) {
  const last = points.at(-1);
  if (!last) return null;
  return (
    <p className="small">
      <b className="mono">{levelWords(last.level, last.of)}</b> {last.sentence}
    </p>
  );
}
