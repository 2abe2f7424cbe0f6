"use client";
/** Headings over the lanes; under them marks for findings, threads and people. */
import { memo } from "react";
import { initials } from "#app/_session/people.tsx";
import { type Axis, boxOf } from "#lib/lanes/axis.ts";
import { textWidth, wrapText } from "#lib/lanes/text-width.ts";
import type { ClassCell, FoundCell, Lane } from "#lib/lanes/types.ts";
import { LaneCell } from "./lane-cell.tsx";
import styles from "./mark-rows.module.css";
import { TYPE } from "./metrics.ts";

interface RowProps<K extends Lane["kind"]> {
  readonly lane: Extract<Lane, { kind: K }>;
  readonly axis: Axis;
  readonly focus: string | null;
}

/** Lines that the headings need. Where a heading is too narrow for its longest word, the word is broken. */
export function headingLines(lane: Extract<Lane, { kind: "headings" }>, axis: Axis): number {
  const lines = lane.cells.map((cell) => {
    const width = boxOf(axis, cell).width - 8;
    const wrapped = wrapText(cell.name, width, MOST_LINES, TYPE.heading * BOLD);
    return wrapped ? wrapped.length : Math.ceil(textWidth(cell.name, TYPE.heading * BOLD) / Math.max(8, width)) + 1;
  });
  return Math.min(MOST_LINES, Math.max(1, ...lines));
}

/** Width of bold type by that of regular type. */
const BOLD = 1.1;
const MOST_LINES = 4;

export const HeadingsRow = memo(function HeadingsRow({ lane, axis, focus }: RowProps<"headings">) {
  return lane.cells.map((cell) => (
    <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
      <span className={styles.heading} data-preview="" aria-hidden="true">
        {cell.name}
      </span>
    </LaneCell>
  ));
});

export const FoundRow = memo(function FoundRow({ lane, axis, focus }: RowProps<"found">) {
  return lane.cells.map((cell) => (
    <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
      <span className={styles.marks} aria-hidden="true">
        {LEVELS.filter((level) => cell[level] > 0).map((level) => (
          <span key={level} className={styles.mark} data-level={level} data-n={seen(cell[level], axis, cell)} />
        ))}
      </span>
    </LaneCell>
  ));
});

/** The number in a mark, where there is room for it. */
const seen = (n: number, axis: Axis, cell: ClassCell): number | undefined =>
  boxOf(axis, cell).width >= 14 ? n : undefined;

const LEVELS = ["must", "look", "info"] as const;
const MARK_PX = 17;

/** As high as the item with the most kinds of marks, which stand one under another. */
export const foundHeight = (cells: readonly FoundCell[]): number =>
  6 + MARK_PX * Math.max(1, ...cells.map((cell) => LEVELS.filter((level) => cell[level] > 0).length));

export const ThreadsRow = memo(function ThreadsRow({ lane, axis, focus }: RowProps<"threads">) {
  return lane.cells.map((cell) => (
    <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
      <span className={styles.marks} aria-hidden="true">
        <span className={styles.mark} data-level="thread" data-n={seen(cell.threads, axis, cell)} />
      </span>
    </LaneCell>
  ));
});

export const PresentRow = memo(function PresentRow({ lane, axis, focus }: RowProps<"present">) {
  return lane.cells.map((cell) => (
    <LaneCell key={cell.key} lane={lane} cell={cell} axis={axis} tabbable={focus === cell.key}>
      <span className={styles.present} aria-hidden="true">
        {cell.people.map(initials).join(" ")}
      </span>
    </LaneCell>
  ));
});
