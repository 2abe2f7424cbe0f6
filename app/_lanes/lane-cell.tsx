"use client";
/** One cell of a lane in its place on the axis. What it shows is said in its name; clicks and keys are the grid's. */
import type { ReactNode } from "react";
import { type Axis, boxOf } from "#lib/lanes/axis.ts";
import type { ClassCell, Lane } from "#lib/lanes/types.ts";
import styles from "./lanes.module.css";
import { cellLabel } from "./words.ts";

interface LaneCellProps {
  readonly lane: Lane;
  readonly cell: ClassCell;
  readonly axis: Axis;
  /** The one cell of the grid that takes the keyboard. */
  readonly tabbable: boolean;
  readonly selected?: boolean;
  readonly children?: ReactNode;
}

export function LaneCell({ lane, cell, axis, tabbable, selected, children }: LaneCellProps) {
  const { x, width } = boxOf(axis, cell);
  const span = cell.last - cell.first + 1;
  return (
    // biome-ignore lint/a11y/useAriaPropsSupportedByRole: both roles take a name
    <div
      role={lane.kind === "work" ? "columnheader" : "gridcell"}
      className={styles.cell}
      data-lane={lane.id}
      data-cell={cell.key}
      aria-label={cellLabel(lane, cell)}
      aria-colindex={cell.first + 2}
      aria-colspan={span > 1 ? span : undefined}
      aria-selected={selected}
      tabIndex={tabbable ? 0 : -1}
      style={{ left: x, width }}
    >
      {children}
    </div>
  );
}
