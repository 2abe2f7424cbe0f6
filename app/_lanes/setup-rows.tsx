"use client";
/** Springs as coils over the stretch in which they stay, with a mark where they change; facing and station likewise. */
import { memo } from "react";
import { coilWeight } from "#app/_plan/coil.tsx";
import { type Axis, boxOf } from "#lib/lanes/axis.ts";
import { COIL, type CoilFit, fitCoils } from "#lib/lanes/coil-fit.ts";
import { stationWords } from "#lib/lanes/setup-lanes.ts";
import { textWidth } from "#lib/lanes/text-width.ts";
import type { FacingAndStation, Lane, Run, Turn } from "#lib/lanes/types.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { LaneCell } from "./lane-cell.tsx";
import lanes from "./lanes.module.css";
import { TYPE } from "./metrics.ts";
import styles from "./setup-rows.module.css";

type SpringsLane = Extract<Lane, { kind: "springs" }>;
type StandingLane = Extract<Lane, { kind: "standing" }>;

interface SpringsRowProps {
  readonly lane: SpringsLane;
  readonly axis: Axis;
  readonly equipment: Equipment;
  readonly focus: string | null;
}

export const SpringsRow = memo(function SpringsRow({ lane, axis, equipment, focus }: SpringsRowProps) {
  return (
    <>
      <div className={lanes.picture} aria-hidden="true">
        {lane.runs.map((run) => (
          <SpringRun key={run.key} run={run} axis={axis} equipment={equipment} />
        ))}
        {lane.turns.map((turn, i) => (
          <TurnMark key={turn.key} turn={turn} before={lane.turns[i - 1]} after={lane.turns[i + 1]} axis={axis} />
        ))}
      </div>
      {lane.cells.map((cell) => (
        <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key} />
      ))}
    </>
  );
});

function SpringRun({ run, axis, equipment }: { run: SpringsLane["runs"][number]; axis: Axis; equipment: Equipment }) {
  const { x, width } = boxOf(axis, run);
  const fit = fitCoils(run.value, width - 2);
  const none = run.value.length === 0;
  return (
    <span className={styles.run} data-springs style={{ left: x, width }}>
      {none && width >= 24 && <span>{width >= 62 ? "no springs" : "none"}</span>}
      {!none && fit && <Coils fit={fit} equipment={equipment} />}
    </span>
  );
}

function Coils({ fit, equipment }: { fit: CoilFit; equipment: Equipment }) {
  return fit.groups.map(({ id, drawn, times }) => {
    const spring = equipment.springs.find((s) => s.id === id);
    const weight = spring ? coilWeight(spring, equipment.springs) : 1;
    return (
      <span key={id} className={styles.coilGroup} style={{ gap: 0, marginRight: COIL.gap }}>
        {Array.from({ length: drawn }, (_, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one coil is like the next
          <NarrowCoil key={n} width={fit.coil} weight={weight} />
        ))}
        {times !== null && <span className={styles.times}>×{times}</span>}
      </span>
    );
  });
}

const COIL_PATH =
  "M1 10 H4 C5.5 10 5.5 3 7.2 3 S8.8 13 10.4 13 S12 3 13.6 3 S15.2 13 16.8 13 S18.4 3 20 3 S21 10 22.4 10 H25";

/** The coil of the rail, drawn closer: its line stays as thick as the spring is stiff. */
function NarrowCoil({ width, weight }: { width: number; weight: number }) {
  return (
    <svg
      className={styles.coil}
      width={width}
      height="16"
      viewBox="0 0 26 16"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path d={COIL_PATH} strokeWidth={weight} vectorEffect="non-scaling-stroke" />
    </svg>
  );
}

interface TurnMarkProps {
  readonly turn: Turn;
  readonly before: Turn | undefined;
  readonly after: Turn | undefined;
  readonly axis: Axis;
}

/** Where springs change. Its words stand where they touch no neighbour's and stay within the axis. */
function TurnMark({ turn, before, after, axis }: TurnMarkProps) {
  const middle = (t: Turn) => ((t.from + t.to) / 2) * axis.scale;
  const x = middle(turn);
  const half = (t: Turn) => textWidth(t.words, TYPE.small) / 2 + 3;
  const clear = (other: Turn | undefined) => !other || Math.abs(x - middle(other)) >= half(turn) + half(other);
  const inside = x >= half(turn) && x + half(turn) <= axis.width;
  return (
    <span className={styles.turn} style={{ left: x }}>
      {clear(before) && clear(after) && inside && <span className={styles.turnWords}>{turn.words}</span>}
    </span>
  );
}

interface StandingRowProps {
  readonly lane: StandingLane;
  readonly axis: Axis;
  readonly focus: string | null;
}

export const StandingRow = memo(function StandingRow({ lane, axis, focus }: StandingRowProps) {
  return (
    <>
      <div className={lanes.picture} aria-hidden="true">
        {lane.runs.map((run) => (
          <StandingRun key={run.key} run={run} axis={axis} />
        ))}
      </div>
      {lane.cells.map((cell) => (
        <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key} />
      ))}
    </>
  );
});

const ARROW_PX = 16;
const TURNED: Readonly<Record<FacingAndStation["facing"], number>> = { front: 0, right: 90, back: 180, left: 270 };

function StandingRun({ run, axis }: { run: Run<FacingAndStation>; axis: Axis }) {
  const { x, width } = boxOf(axis, run);
  const { facing, station } = run.value;
  const fits = (words: string, more = 0) => textWidth(words, TYPE.small) + more + 4 <= width;
  const words = stationWords(station);
  const stand = [words, station].find((way) => fits(way));
  return (
    <span className={styles.run} data-lines="2" style={{ left: x, width }}>
      <span className={styles.facing}>
        {width >= ARROW_PX && (
          <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true" style={{ rotate: `${TURNED[facing]}deg` }}>
            <path d="M6 11 V2 M2.5 5.5 L6 2 L9.5 5.5" />
          </svg>
        )}
        {fits(facing, ARROW_PX) && facing}
      </span>
      <span>{stand}</span>
    </span>
  );
}
