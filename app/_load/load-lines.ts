/** The lines of the load curve: this item's springs, one step lighter and heavier, and the spring item before. */
import { type CurvePoint, curvePoints } from "#lib/load/curve.ts";
import { forceN, springItemBefore, travelMm } from "#lib/load/load.ts";
import { neighbours } from "#lib/load/neighbours.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";

export type LineKind = "own" | "lighter" | "heavier" | "before";

export interface LoadLine {
  readonly kind: LineKind;
  readonly springs: MoveItem["springs"];
  /** Cut off where the picture ends. */
  readonly points: readonly CurvePoint[];
  /** Newtons at the start, the middle and the end of the travel. */
  readonly newtons: readonly [number, number, number];
}

/**
 * The lines in the order of the table. Those of the item start from `offsetMm`, which may only be tried; the item before
 * keeps its own travel and offset.
 */
export function loadLines(plan: Plan, item: MoveItem, move: Move, offsetMm: number): LoadLine[] {
  const { lighter, heavier } = neighbours(plan, item);
  const travel = travelMm(plan, move);
  const shownToMm = travel[1];
  const here = (kind: LineKind, springs: MoveItem["springs"]) =>
    line(plan, { kind, springs, travel, offsetMm, shownToMm });
  const lines = [here("own", item.springs)];
  if (lighter) lines.push(here("lighter", lighter.springs));
  if (heavier) lines.push(here("heavier", heavier.springs));
  const before = springItemBefore(plan, item.id);
  const beforeMove = before && moveOf(plan, before);
  if (before && beforeMove) {
    const setup = { springs: before.springs, offsetMm: before.offsetMm ?? 0, travel: travelMm(plan, beforeMove) };
    lines.push(line(plan, { kind: "before", ...setup, shownToMm }));
  }
  return lines;
}

interface LineSetup {
  readonly kind: LineKind;
  readonly springs: MoveItem["springs"];
  readonly travel: readonly [number, number];
  readonly offsetMm: number;
  /** Where the picture ends: at the end of the item's travel. */
  readonly shownToMm: number;
}

function line(plan: Plan, { kind, springs, travel: [fromMm, toMm], offsetMm, shownToMm }: LineSetup): LoadLine {
  const at = (xMm: number) => forceN(plan.equipment, springs, { xMm, offsetMm });
  return {
    kind,
    springs,
    points:
      fromMm > shownToMm
        ? []
        : curvePoints(plan.equipment, springs, { fromMm, toMm: Math.min(toMm, shownToMm), offsetMm }),
    newtons: [at(fromMm), at((fromMm + toMm) / 2), at(toMm)],
  };
}
