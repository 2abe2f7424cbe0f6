/** The moves of a signed class as small plates. */
import { LatePlateFigure, SMALL_PX } from "#app/_parts/plate/late-plate-figure.tsx";
import { Plate } from "#app/_parts/plate/plate.tsx";
import { type PlateFacts, platesOf } from "#app/_parts/plate/plate-facts.ts";
import type { Card } from "#lib/card/schema.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";

export interface PlateOfClass {
  readonly facts: PlateFacts;
  /** When its work begins, seconds of the class. */
  readonly at: number;
}

export interface ClassPlates {
  /** Undefined for what is no move. */
  of(itemId: string): PlateOfClass | undefined;
}

export function classPlates({ plan, clock, cues, dropped }: Card): ClassPlates {
  const factsOf = platesOf(plan, { rows: clock.rows, cues, dropped });
  const starts = new Map(clock.rows.map((row) => [row.item, row.start]));
  const plates = plan.items.filter(isMoveItem).map((item): [string, PlateOfClass] => {
    return [item.id, { facts: factsOf(item), at: starts.get(item.id) ?? 0 }];
  });
  const byId = new Map(plates);
  return { of: (id) => byId.get(id) };
}

export function SmallPlate({ of: { facts, at } }: { readonly of: PlateOfClass }) {
  const { move, facing, side } = facts;
  return (
    <Plate {...{ facts, at }} density="small" figure={<LatePlateFigure {...{ move, facing, side }} px={SMALL_PX} />} />
  );
}
