"use client";
/** The work: plates as long as they last, shaped by side, with the window of their pattern, its texture, and a name or a number. */
import { memo } from "react";
import { LatePlateFigure } from "#app/_parts/plate/late-plate-figure.tsx";
import plate from "#app/_parts/plate/plate.module.css";
import { PlateWindow } from "#app/_parts/plate/plate-window.tsx";
import { tintOf } from "#app/_parts/plate/tint.ts";
import { type Axis, boxOf } from "#lib/lanes/axis.ts";
import { fitNames, NAME_TYPE, type NameFit, type NamesFit, numberBox } from "#lib/lanes/name-fit.ts";
import { textWidth } from "#lib/lanes/text-width.ts";
import type { Lane, WorkCell } from "#lib/lanes/types.ts";
import { LaneCell } from "./lane-cell.tsx";
import { FIGURE_PX, LEAST_FIGURE_PX, SIDE_PX, TEXTURE_PX, TYPE, WINDOW_PX } from "./metrics.ts";
import styles from "./work-row.module.css";

type WorkLane = Extract<Lane, { kind: "work" }>;

/** How the names of the work lane fit at this scale. */
export function workNamesFit(lane: WorkLane, axis: Axis): NamesFit {
  return fitNames(lane.cells.map((cell) => ({ name: cell.bare, number: blockNumber(cell), ...boxOf(axis, cell) })));
}

/** What is shown for a name that does not fit: the number of a move, "p" for a pause. */
export const blockNumber = ({ number, timed }: WorkCell): string =>
  number > 0 ? String(number) : timed === "pause" ? "p" : "";

export const workHeight = ({ height, numbered }: NamesFit): number =>
  WINDOW_PX + height + (numbered ? NAME_TYPE.line : 0) + SIDE_PX + TEXTURE_PX;

interface WorkRowProps {
  readonly lane: WorkLane;
  readonly axis: Axis;
  readonly names: NamesFit;
  readonly focus: string | null;
  readonly selected: string | null;
  readonly paper: boolean;
}

export const WorkRow = memo(function WorkRow({ lane, axis, names, focus, selected, paper }: WorkRowProps) {
  return lane.cells.map((cell, i) => (
    <LaneCell
      key={cell.key}
      lane={lane}
      cell={cell}
      axis={axis}
      tabbable={focus === cell.key}
      selected={cell.item !== null && cell.item === selected}
    >
      <Block
        cell={cell}
        axis={axis}
        fit={names.fits[i] ?? null}
        numbered={names.numbered}
        selected={cell.item !== null && cell.item === selected}
        paper={paper}
      />
    </LaneCell>
  ));
});

interface BlockProps {
  readonly cell: WorkCell;
  readonly axis: Axis;
  readonly fit: NameFit | null;
  readonly numbered: boolean;
  readonly selected: boolean;
  readonly paper: boolean;
}

function Block({ cell, axis, fit, numbered, selected, paper }: BlockProps) {
  const { pattern } = cell;
  const tint = pattern === null ? (cell.known ? cell.timed : "plain") : tintOf({ pattern });
  const box = boxOf(axis, cell);
  return (
    <div
      className={`${plate.plate} ${styles.block}`}
      data-density="lane"
      data-tint={tint}
      data-shape={cell.side}
      data-selected={selected || undefined}
      aria-hidden="true"
    >
      {cell.timed === "move" && <Window cell={cell} width={box.width} paper={paper} />}
      {numbered && fit?.way !== "number" && <span className={styles.blockNumber}>{blockNumber(cell)}</span>}
      {fit?.way === "number" && <LoneNumber cell={cell} axis={axis} row={fit.row} />}
      {fit && fit.way !== "number" && (
        <span className={styles.name} data-way={fit.way}>
          {fit.lines.map((line, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines of one name have no other identity
            <span key={n}>{line}</span>
          ))}
        </span>
      )}
      <span className={styles.side}>{sideMark(cell, box.width)}</span>
      <span className={styles.texture} />
    </div>
  );
}

function Window({ cell, width, paper }: { readonly cell: WorkCell; readonly width: number; readonly paper: boolean }) {
  const { side } = cell;
  const move = cell.move ?? undefined;
  const facing = cell.facing ?? undefined;
  const px = Math.min(FIGURE_PX, Math.floor(width) - 2);
  const figure = px >= LEAST_FIGURE_PX && <LatePlateFigure {...{ move, facing, side, px }} eager={paper} />;
  return <PlateWindow move={move} figure={figure} />;
}

function LoneNumber({ cell, axis, row }: { cell: WorkCell; axis: Axis; row: number }) {
  const block = { name: cell.bare, number: blockNumber(cell), ...boxOf(axis, cell) };
  const { x, width } = numberBox(block);
  return (
    <span className={styles.loneNumber} style={{ left: x - block.x, width, top: row * NAME_TYPE.line }}>
      {block.number}
    </span>
  );
}

/** The side in the longest words that fit. The shape of the block shows it as well. */
function sideMark({ side }: WorkCell, width: number): string {
  if (side === "both") return "";
  const ways = side === "alternating" ? ["alternating", "in turn", "L R"] : [side, side === "left" ? "L" : "R"];
  return ways.find((way) => textWidth(way, TYPE.small) + 4 <= width) ?? "";
}
