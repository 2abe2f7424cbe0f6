/** Dashed lines from the rail to the slips: straight where a slip stands at its height, bent where it had to slide. */
import type { Slip } from "#lib/margin/slips.ts";
import type { RailLayout } from "#lib/rail/layout.ts";
import { segmentOf } from "#lib/rail/layout.ts";
import styles from "./margin.module.css";

const WIDTH_PX = 28;
/** Where on the slip and on the item a line ends: the height of the first line of words. */
const DOWN_PX = 16;

interface Props {
  readonly slips: readonly Slip[];
  readonly places: ReadonlyMap<string, number>;
  readonly layout: RailLayout;
  readonly height: number;
}

export function SlipTies({ slips, places, layout, height }: Props) {
  const tall = Math.max(height, layout.height);
  return (
    <svg className={styles.ties} width={WIDTH_PX} height={tall} viewBox={`0 0 ${WIDTH_PX} ${tall}`} aria-hidden="true">
      {slips.map((slip) => {
        const segment = slip.about === null ? undefined : segmentOf(layout, slip.about);
        const top = places.get(slip.id);
        if (!segment || top === undefined) return null;
        const from = segment.top + Math.min(DOWN_PX, segment.height / 2);
        const to = top + DOWN_PX;
        const level = slip.kind === "finding" ? slip.finding.level : "thread";
        const bend = `M0 ${from} H8 C14 ${from} 14 ${to} 20 ${to} H${WIDTH_PX}`;
        return <path key={slip.id} d={bend} className={styles.tie} data-level={level} />;
      })}
    </svg>
  );
}
