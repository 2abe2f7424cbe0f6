/** The figure of a change, under its seconds: the old set-up pale, the new one in ink. Only where it moves no word. */
import { memo } from "react";
import { changeInto } from "#lib/figure/change-of-plan.ts";
import { type ChangeDrawing, drawChange } from "#lib/figure/drawing/draw-change.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { ChangePicture } from "../../_parts/change-figure.tsx";
import styles from "./change.module.css";

/** Drawn for this width, pixels, so that its lines are thick enough from afar; the screen makes it larger. */
const PX = 200;

/** Its springs are drawn beside their acts. */
export const DrawnChange = memo(function DrawnChange({
  plan,
  item,
}: {
  readonly plan: Plan;
  readonly item: string | null;
}) {
  const drawing = item === null ? null : drawingOf(plan, item);
  if (!drawing) return null;
  return (
    <span className={styles.drawn} data-extra hidden>
      <ChangePicture drawing={drawing} px={PX} />
    </span>
  );
});

/** Of each plan, by item: worked out once, since a class comes back to its changes and a screen is drawn every second. */
const drawings = new WeakMap<Plan, Map<string, ChangeDrawing | null>>();

function drawingOf(plan: Plan, item: string): ChangeDrawing | null {
  const known = drawings.get(plan) ?? new Map<string, ChangeDrawing | null>();
  drawings.set(plan, known);
  if (!known.has(item)) {
    const change = changeInto(plan, item);
    known.set(item, change && drawChange(change, { px: PX, coils: false }));
  }
  return known.get(item) ?? null;
}
