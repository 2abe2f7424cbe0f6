/** A plan with some of its work given other seconds and some left out, as the floor goes on with it. */
import type { Plan } from "#lib/plan/schema.ts";

export interface Retiming {
  readonly changed: readonly { readonly item: string; readonly to: number }[];
  /** Ids of items left out. */
  readonly dropped: readonly string[];
  readonly closingSeconds: number;
  /** Where the opening, or a change, gets longer. By the item changed into. */
  readonly openingSeconds?: number | undefined;
  readonly changes?: readonly { readonly item: string; readonly to: number }[] | undefined;
}

/** New seconds, new closing, without what is left out; everything else as it was. */
export function retimedPlan(plan: Plan, retiming: Retiming): Plan {
  const { changed, dropped, closingSeconds, openingSeconds = plan.openingSeconds } = retiming;
  const changes = new Map(retiming.changes?.map((change) => [change.item, change.to]));
  const to = new Map(changed.map((change) => [change.item, change.to]));
  const gone = new Set(dropped);
  const kept = plan.items.filter((item) => !gone.has(item.id));
  const moves = kept.filter((item) => item.kind === "move");
  const before = plan.items.filter((item) => item.kind === "move");
  const comesAfter = (list: readonly { id: string }[], id: string) => list[list.findIndex((i) => i.id === id) - 1]?.id;
  const items = kept.map((item) => {
    if (item.kind === "pause") return { ...item, seconds: to.get(item.id) ?? item.seconds };
    if (item.kind !== "move") return item;
    const { transitionSeconds, ...bare } = { ...item, seconds: to.get(item.id) ?? item.seconds };
    // A change planned from a set-up that is left out says nothing about the one that now comes before.
    const same = comesAfter(moves, item.id) === comesAfter(before, item.id);
    const change = changes.get(item.id) ?? (same ? transitionSeconds : undefined);
    return change === undefined ? bare : { ...bare, transitionSeconds: change };
  });
  return { ...plan, closingSeconds, ...(openingSeconds === undefined ? {} : { openingSeconds }), items };
}
