/** The class as the steps that the floor goes through: opening, change, work, pause, ..., closing. */
import type { ClassClock } from "#lib/clock/clock.ts";
import type { Plan } from "#lib/plan/schema.ts";

export type FloorPhase = "waiting" | "opening" | "change" | "work" | "pause" | "closing" | "done";

/** Seconds from the start of the class; `to` is above `from`. Steps follow each other without a gap. */
export interface FloorStep {
  readonly phase: "opening" | "change" | "work" | "pause" | "closing";
  /** The item worked, paused at, or being changed into; null in the opening and the closing. */
  readonly item: string | null;
  readonly from: number;
  readonly to: number;
}

/** The steps of a class that take time. */
export function floorSteps(card: { readonly plan: Plan; readonly clock: ClassClock }): FloorStep[] {
  const { rows, total } = card.clock;
  const steps: FloorStep[] = [];
  const add = (step: FloorStep) => {
    if (step.to > step.from) steps.push(step);
  };
  let at = 0;
  for (const item of card.plan.items) {
    const row = rows.find((r) => r.item === item.id);
    if (!row || item.kind === "heading") continue;
    if (steps.length === 0 && at === 0) add({ phase: "opening", item: null, from: 0, to: row.transitionFrom });
    add({ phase: "change", item: item.id, from: row.transitionFrom, to: row.start });
    add({ phase: item.kind === "pause" ? "pause" : "work", item: item.id, from: row.start, to: row.end });
    at = row.end;
  }
  if (steps.length === 0) return [{ phase: "opening", item: null, from: 0, to: total }];
  add({ phase: "closing", item: null, from: at, to: total });
  return steps;
}
