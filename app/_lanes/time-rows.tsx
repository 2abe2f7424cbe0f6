"use client";
/** Lanes whose cells are filled by their values: talk, the coach's voice, the crew's lines, breath, muscles, cautions. */
import { memo } from "react";
import { percent } from "#lib/formats/percent.ts";
import { type Axis, boxOf } from "#lib/lanes/axis.ts";
import { textWidth, wrapText } from "#lib/lanes/text-width.ts";
import type { BreathCell, ClassCell, Lane, TalkCell, VoiceCell } from "#lib/lanes/types.ts";
import { wavePaths } from "#lib/lanes/wave.ts";
import { LaneCell } from "./lane-cell.tsx";
import lanes from "./lanes.module.css";
import { TYPE } from "./metrics.ts";
import styles from "./time-rows.module.css";

interface RowProps<K extends Lane["kind"]> {
  readonly lane: Extract<Lane, { kind: K }>;
  readonly axis: Axis;
  readonly focus: string | null;
}

const fits = (words: string, width: number): boolean => textWidth(words, TYPE.small) + 2 <= width;

export const TalkRow = memo(function TalkRow({ lane, axis, focus }: RowProps<"talk">) {
  return (
    <>
      <span className={styles.full} aria-hidden="true" />
      {lane.cells.map((cell) => (
        <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
          <Talk cell={cell} width={boxOf(axis, cell).width} />
        </LaneCell>
      ))}
    </>
  );
});

/** As high as the share of the time that is talk. Talk above the line, hatched, does not fit. */
function Talk({ cell, width }: { cell: TalkCell; width: number }) {
  const over = cell.share > 1;
  const words = Number.isFinite(cell.share) ? percent(cell.share) : "no time";
  const short = words.replace("%", "");
  const shown = [words, short].find((way) => fits(way, width));
  return (
    <span className={styles.talk} data-over={over || undefined} aria-hidden="true">
      <span className={styles.talkWords}>{shown}</span>
      <span className={styles.talkBar}>
        <span className={styles.talkFill} style={{ height: `${Math.min(1, cell.share / MOST_TALK) * 100}%` }} />
      </span>
    </span>
  );
}

/** The share of talk at which the bar is full. `.full` in the stylesheet is the line at 1. */
const MOST_TALK = 1.25;

export const VoiceRow = memo(function VoiceRow({ lane, axis, focus }: RowProps<"voice">) {
  return (
    <>
      <div className={lanes.picture} aria-hidden="true">
        {lane.cells.map((cell) => (
          <Voice key={cell.key} cell={cell} axis={axis} />
        ))}
      </div>
      {lane.cells.map((cell) => (
        <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key} />
      ))}
    </>
  );
});

function Voice({ cell, axis }: { cell: VoiceCell; axis: Axis }) {
  const end = boxOf(axis, { from: cell.to, to: cell.to }).x;
  return (
    <>
      {cell.spans.map((span) => {
        const { x, width } = boxOf(axis, span);
        const call = span.call || undefined;
        return <span key={span.key} className={styles.voice} data-call={call} style={{ left: x, width }} />;
      })}
      {cell.dropped > 0 && <span className={styles.dropped} style={{ left: end - DROPPED_PX }} />}
    </>
  );
}

/** Width of the mark for lines that have no time, px. */
const DROPPED_PX = 5;

export const CrewLinesRow = memo(function CrewRow({ lane, axis, focus }: RowProps<"crew">) {
  return (
    <>
      <div className={lanes.picture} aria-hidden="true">
        {lane.cells.map((cell, i) => {
          const { x } = boxOf(axis, cell);
          const end = lane.cells[i + 1] ? boxOf(axis, lane.cells[i + 1] ?? cell).x : axis.width;
          return <CrewWords key={cell.key} text={cell.text} x={x} width={end - x - 4} />;
        })}
      </div>
      {lane.cells.map((cell) => (
        <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key} />
      ))}
    </>
  );
});

/** From its move as far as the next line. The readout over the lanes has the whole line. */
function CrewWords({ text, x, width }: { text: string; x: number; width: number }) {
  const lines = wrapText(text, width - 10, 2, TYPE.small);
  return (
    <span className={styles.crew} style={{ left: x, width: Math.max(10, width) }}>
      {lines ? lines.join("\n") : shortened(text, width - 10)}
    </span>
  );
}

/** As many whole words as fit, and an ellipsis. */
function shortened(text: string, width: number): string {
  const words = text.split(/\s+/);
  const n = words.findLastIndex((_, i) => textWidth(`${words.slice(0, i + 1).join(" ")} …`, TYPE.small) <= width);
  if (n < 0) return textWidth("…", TYPE.small) <= width ? "…" : "";
  return `${words.slice(0, n + 1).join(" ")} …`;
}

export const BreathRow = memo(function BreathRow({ lane, axis, focus }: RowProps<"breath">) {
  return lane.cells.map((cell) => (
    <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
      <Breath cell={cell} width={boxOf(axis, cell).width} />
    </LaneCell>
  ));
});

const WAVE_PX = 16;

/** One wave for each repetition, in its tempo; the thick half is the breath out. Too many to draw: grey, and the number. */
function Breath({ cell, width }: { cell: BreathCell; width: number }) {
  const words = cell.reps === null ? "hold" : String(Math.round(cell.reps));
  const waves = wavePaths(cell, { width, height: WAVE_PX });
  return (
    <span className={styles.breath} aria-hidden="true">
      <span>{fits(words, width) && words}</span>
      {waves ? (
        <svg width={width} height={WAVE_PX} viewBox={`0 0 ${width} ${WAVE_PX}`} aria-hidden="true">
          <path d={waves.line} />
          <path d={waves.exhale} className={styles.exhale} />
        </svg>
      ) : (
        <span className={styles.many} data-hold={cell.reps === null || undefined} />
      )}
    </span>
  );
}

/** Height of a prime mover, px. */
const MUSCLE_PX = 14;

export const MuscleRow = memo(function MuscleRow({ lane, axis, focus }: RowProps<"muscle">) {
  return lane.cells.map((cell) => (
    <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
      <span
        className={styles.muscle}
        style={{ height: MUSCLE_PX * (0.25 + 0.75 * cell.weight), opacity: 0.4 + 0.6 * cell.weight }}
        aria-hidden="true"
      />
    </LaneCell>
  ));
});

export const CautionRow = memo(function CautionRow({ lane, axis, focus }: RowProps<"caution">) {
  return lane.cells.map((cell: ClassCell) => (
    <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
      <span className={styles.caution} data-expected={lane.expected || undefined} aria-hidden="true" />
    </LaneCell>
  ));
});
