/** What a plate says of a move, wherever it stands. Pure. */
import { bareName } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Equipment, Facing, ItemSide, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { SILENT_PLATE, type Stretch, saidStretches } from "./said.ts";

export interface PlateFacts {
  readonly name: string;
  readonly side: ItemSide;
  readonly seconds: number;
  readonly springs: Readonly<Record<string, number>>;
  readonly equipment: Equipment;
  /** How far from the usual place people start, mm. */
  readonly offsetMm: number;
  /** Whole repetitions; null for a hold. */
  readonly reps: number | null;
  /** Undefined where the move is not known. */
  readonly move: Move | undefined;
  readonly facing: Facing | undefined;
  /** When its lines are said, as shares of its time. */
  readonly said: readonly Stretch[];
  /** More is written than there is time for. */
  readonly over: boolean;
}

interface Timing {
  readonly rows: readonly {
    readonly item: string;
    readonly start: number;
    readonly end: number;
    readonly reps: number | null;
  }[];
  readonly cues: Parameters<typeof saidStretches>[0]["cues"];
  readonly dropped: readonly { readonly item: string }[];
}

/** Facts of each move of a plan, by the time that its clock and its cues give it. */
export function platesOf(plan: Plan, timing: Timing): (item: MoveItem) => PlateFacts {
  const said = saidStretches(timing);
  const reps = new Map(timing.rows.map((row) => [row.item, row.reps]));
  const over = new Set(timing.dropped.map(({ item }) => item));
  return (item) => ({
    name: bareName(plan, item),
    side: item.side,
    seconds: item.seconds,
    springs: item.springs,
    equipment: plan.equipment,
    offsetMm: item.offsetMm ?? 0,
    reps: reps.get(item.id) ?? null,
    move: moveOf(plan, item),
    facing: item.facing,
    said: said.get(item.id) ?? SILENT_PLATE,
    over: over.has(item.id),
  });
}
