/** The change from one set-up to the next as a figure: what comes off and goes on, which way to turn, where to go. */
import { own } from "#lib/plan/lookup.ts";
import { type Equipment, FACINGS, type Facing, type ItemSide } from "#lib/plan/schema.ts";
import { type CoilRow, coilRows } from "./coil-rows.ts";
import { figureOf, type MoveFigure } from "./figure.ts";
import type { FigureMove } from "./stances/stage.ts";

/** One of the two set-ups: the move, and what its item has of its own. */
export interface FigureSetup {
  readonly move: FigureMove;
  readonly springs: Readonly<Record<string, number>>;
  readonly side?: ItemSide | undefined;
  readonly facing?: Facing | undefined;
}

export interface SpringMark extends CoilRow {
  readonly label: string;
  readonly act: "stays" | "comes-off" | "goes-on";
}

export interface TurnMark {
  readonly from: Facing;
  readonly quarters: 1 | 2;
  /** The person's own way round. A half turn goes to the left, as either way is as short. */
  readonly way: "left" | "right";
}

export interface ChangeFigure {
  readonly from: MoveFigure;
  readonly to: MoveFigure;
  readonly springs: readonly SpringMark[];
  readonly turn: TurnMark | null;
  /** Whether the person goes to another station. */
  readonly goes: boolean;
}

export function changeFigure(from: FigureSetup, to: FigureSetup, equipment: Pick<Equipment, "springs">): ChangeFigure {
  const before = figureOf(from.move, from);
  const after = figureOf(to.move, to);
  return {
    from: before,
    to: after,
    springs: springMarks(from.springs, to.springs, equipment),
    turn: turnBetween(from.facing ?? from.move.facing, to.facing ?? to.move.facing),
    goes: from.move.station !== to.move.station,
  };
}

/** The short way from one facing to another. */
function turnBetween(from: Facing, to: Facing): TurnMark | null {
  const rightQuarters = (FACINGS.indexOf(to) - FACINGS.indexOf(from) + FACINGS.length) % FACINGS.length;
  if (rightQuarters === 0) return null;
  return { from, quarters: rightQuarters === 2 ? 2 : 1, way: rightQuarters === 1 ? "right" : "left" };
}

/** One mark a spring that is on before or after, in the order of the machine: those that stay before those that change. */
function springMarks(
  from: Readonly<Record<string, number>>,
  to: Readonly<Record<string, number>>,
  equipment: Pick<Equipment, "springs">,
): SpringMark[] {
  const known = equipment.springs.map(({ id }) => id);
  const strange = [...Object.keys(from), ...Object.keys(to)].filter((id) => !known.includes(id)).sort();
  return [...new Set([...known, ...strange])].flatMap((id) => {
    const [was, will] = [own(from, id) ?? 0, own(to, id) ?? 0];
    const label = equipment.springs.find((spring) => spring.id === id)?.label ?? id;
    const [row] = coilRows({ [id]: 1 }, equipment);
    const marks = (count: number, act: SpringMark["act"]): SpringMark[] =>
      row ? Array.from({ length: Math.max(0, count) }, () => ({ ...row, label, act })) : [];
    return [...marks(Math.min(was, will), "stays"), ...marks(was - will, "comes-off"), ...marks(will - was, "goes-on")];
  });
}
