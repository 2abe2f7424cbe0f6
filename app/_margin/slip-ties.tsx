/**
 * Dashed lines from the rail to the slips: straight where a slip is at its item's height, around two corners where it had to
 * move. Each item's lines have a lane of their own, later items further out, so that they hardly ever cross.
 */
import type { Slip } from "#lib/margin/slips.ts";
import { type RailLayout, segmentOf } from "#lib/rail/layout.ts";
import styles from "./margin.module.css";

const WIDTH_PX = 28;
const LANES = [22, 18, 14, 10, 6] as const;
/** Where a line meets the slip and the item: the height of the first line of text. */
const DOWN_PX = 16;
/** A slip moved by no more than this gets a straight line. */
const STRAIGHT_PX = 2;

interface Props {
  readonly slips: readonly Slip[];
  readonly places: ReadonlyMap<string, number>;
  readonly layout: RailLayout;
  readonly height: number;
  readonly selectedId: string | null;
}

export function SlipTies({ slips, places, layout, height, selectedId }: Props) {
  const tall = Math.max(height, layout.height);
  const lanes = lanesOf(slips);
  return (
    <svg className={styles.ties} width={WIDTH_PX} height={tall} viewBox={`0 0 ${WIDTH_PX} ${tall}`} aria-hidden="true">
      {slips.map((slip) => {
        const segment = slip.about === null ? undefined : segmentOf(layout, slip.about);
        const top = places.get(slip.id);
        if (!segment || top === undefined) return null;
        const from = segment.top + Math.min(DOWN_PX, segment.height / 2);
        const to = top + DOWN_PX;
        const lane = LANES[(lanes.get(slip.about ?? "") ?? 0) % LANES.length] ?? LANES[0];
        const level = slip.kind === "finding" ? slip.finding.level : "thread";
        return (
          <path
            key={slip.id}
            d={Math.abs(from - to) <= STRAIGHT_PX ? `M0 ${to}H${WIDTH_PX}` : `M0 ${from}H${lane}V${to}H${WIDTH_PX}`}
            className={styles.tie}
            data-level={level}
            data-selected={slip.about === selectedId || undefined}
          />
        );
      })}
    </svg>
  );
}

/** Item id -> its number among the items that have slips. */
function lanesOf(slips: readonly Slip[]): ReadonlyMap<string, number> {
  const lanes = new Map<string, number>();
  for (const { about } of slips) if (about !== null && !lanes.has(about)) lanes.set(about, lanes.size);
  return lanes;
}
