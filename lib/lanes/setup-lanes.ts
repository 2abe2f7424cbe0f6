/** Set-up lanes: springs, with a mark where they change, and facing with station. */
import type { ClockRow } from "#lib/clock/clock.ts";
import { springCounts } from "#lib/cues/springs.ts";
import { springWords } from "#lib/plan/format.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { setupOf } from "#lib/transitions/transitions.ts";
import { cellOf, type PlacedColumn } from "./columns.ts";
import type { ClassCell, FacingAndStation, Lane, Run, Turn } from "./types.ts";

/** A move item with its column and its row on the clock. */
export interface LaneMove extends PlacedColumn {
  readonly item: MoveItem;
  readonly row: ClockRow;
}

export function springsLane(plan: Plan, moves: readonly LaneMove[]): Lane {
  const cells = moves.map((p): ClassCell => {
    const change = turnWords(p.row);
    const words = springWords(plan.equipment, p.item.springs);
    return cellOf(p, change === "" ? words : `${words}, changed (${change})`);
  });
  const runs = runsOf(moves, (p) => springCounts(plan, p.item.springs));
  const turns = moves.flatMap((p): Turn[] => {
    const words = turnWords(p.row);
    return words === "" ? [] : [{ key: p.column.key, from: p.column.gapFrom, to: p.column.from, words }];
  });
  return { id: "springs", kind: "springs", name: "Springs", cells, runs, turns };
}

/** "+2 −1": springs put on and taken off in the change to the move. */
function turnWords({ transition }: ClockRow): string {
  const { springOn = 0, springOff = 0 } = transition.actions;
  return [springOn > 0 && `+${springOn}`, springOff > 0 && `−${springOff}`].filter(Boolean).join(" ");
}

const STATION_WORDS: Readonly<Record<FacingAndStation["station"], string>> = {
  front: "front platform",
  carriage: "carriage",
  back: "back platform",
  floor: "floor",
};
export const stationWords = (station: FacingAndStation["station"]): string => STATION_WORDS[station];

/** Facing and station. A move that the plan does not carry has neither. */
export function facingLane(plan: Plan, moves: readonly LaneMove[]): Lane {
  const known = moves.flatMap((p) => {
    const setup = setupOf(plan, p.item);
    return setup ? [{ ...p, setup }] : [];
  });
  const cells = known.map((p) => {
    const { facing, station, position } = p.setup;
    return cellOf(p, `facing ${facing}, ${stationWords(station)}, ${position}`);
  });
  const runs = runsOf(known, ({ setup }): FacingAndStation => ({ facing: setup.facing, station: setup.station }));
  return { id: "standing", kind: "standing", name: "Facing, station", cells, runs };
}

/** Joins neighbouring moves with equal values, from the start of the first to the end of the last. */
function runsOf<P extends PlacedColumn, T>(placed: readonly P[], read: (p: P) => T): Run<T>[] {
  const runs: Run<T>[] = [];
  let last = "";
  for (const p of placed) {
    const value = read(p);
    const same = JSON.stringify(value);
    const before = runs.at(-1);
    if (before && same === last) runs[runs.length - 1] = { ...before, to: p.column.to };
    else runs.push({ key: p.column.key, from: p.column.from, to: p.column.to, value });
    last = same;
  }
  return runs;
}
