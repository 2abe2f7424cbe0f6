/** The figure of a change, under its seconds: the old set-up pale, the new one in ink. Only where it moves no word. */
import { memo } from "react";
import { changeInto } from "#lib/figure/change-of-plan.ts";
import { drawChange } from "#lib/figure/drawing/draw-change.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { ChangePicture } from "../../_parts/change-figure.tsx";
import styles from "./change.module.css";

/** Drawn for this width, pixels, so that its lines are thick enough from afar; the screen makes it larger. */
const PX = 200;

/** Drawn once for each change: the screen around it is drawn every second. Its springs are drawn beside their acts. */
export const DrawnChange = memo(function DrawnChange({
  plan,
  item,
}: {
  readonly plan: Plan;
  readonly item: string | null;
}) {
  const change = item === null ? null : changeInto(plan, item);
  if (!change) return null;
  return (
    <span className={styles.drawn} data-extra hidden>
      <ChangePicture drawing={drawChange(change, { px: PX, coils: false })} px={PX} />
    </span>
  );
});
