/** A plan as lanes over time: all that the whole-class view shows, in seconds and words, without pixels. */

import type { Balance } from "#lib/balance/balance.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { breathLane, cautionLanes, muscleLanes } from "./body-lanes.ts";
import { type ColumnsInput, laneColumns, type PlacedColumn } from "./columns.ts";
import { foundLane, type PersonOnItem, presentLane, threadsLane } from "./count-lanes.ts";
import { facingLane, type LaneMove, springsLane } from "./setup-lanes.ts";
import type { ClassLanes, Lane } from "./types.ts";
import { crewLane, talkLane, voiceLane } from "./voice-lanes.ts";
import { headingsLane, workLane } from "./work-lanes.ts";

export interface LanesInput extends ColumnsInput {
  readonly balance: Balance;
  /** Talk divided by the time available, by item id. */
  readonly talkShares: Readonly<Record<string, number>>;
  readonly track: CueTrack;
  readonly findings: readonly Finding[];
  readonly threads: readonly ThreadView[];
  /** Other people on this plan, each with their current item. */
  readonly present: readonly PersonOnItem[];
}

/** Pure. Cells of a lane are in order of time, never overlap, and lie between 0 and `total`. */
export function classLanes(input: LanesInput): ClassLanes {
  const { plan, total, nameOf, balance } = input;
  const columns = laneColumns(input);
  const placed = columns.map((column, at) => ({ column, at }));
  const moves = movesOf(input, placed);
  const lanes = [
    headingsLane(plan, placed, nameOf),
    workLane(plan, placed, nameOf),
    springsLane(plan, moves),
    facingLane(plan, moves),
    talkLane(moves, input.talkShares),
    voiceLane(moves, input.track),
    crewLane(moves, readerOf(plan, { rows: input.rows, total })),
    breathLane(plan, moves),
    ...muscleLanes(plan, moves, balance),
    ...cautionLanes(plan, moves),
    foundLane(input.plan, placed, input.findings),
    threadsLane(placed, input.threads),
    presentLane(placed, input.present),
  ];
  const shown = lanes.filter((lane) => lane.kind === "work" || lane.cells.length > 0);
  return { columns, lanes: shown, total, lengthSeconds: plan.lengthSeconds };
}

function movesOf({ plan, rows }: LanesInput, placed: readonly PlacedColumn[]): LaneMove[] {
  const columns = new Map(placed.map((p) => [p.column.key, p]));
  return plan.items.flatMap((item, i): LaneMove[] => {
    const row = rows[i];
    const p = columns.get(item.id);
    return item.kind === "move" && row && p ? [{ ...p, item, row }] : [];
  });
}

/** `next`, with each unchanged lane replaced by the same object of `before`, so that it is not rendered again. */
export function keepSameLanes(next: ClassLanes, before: ClassLanes | null): ClassLanes {
  if (before === null) return next;
  const old = new Map(before.lanes.map((lane) => [lane.id, lane]));
  const lanes = next.lanes.map((lane): Lane => {
    const was = old.get(lane.id);
    return was !== undefined && JSON.stringify(was) === JSON.stringify(lane) ? was : lane;
  });
  return { ...next, lanes };
}
