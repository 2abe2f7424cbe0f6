/** A plan after a re-timing: some of its items have new seconds, some are left out. */
import type { Plan } from "#lib/plan/schema.ts";

export interface Retiming {
  readonly changed: readonly { readonly item: string; readonly to: number }[];
  /** Ids of items left out. */
  readonly dropped: readonly string[];
  readonly closingSeconds: number;
  /** Set when the opening, or a change, gets longer. Changes are named by the item that follows them. */
  readonly openingSeconds?: number | undefined;
  readonly changes?: readonly { readonly item: string; readonly to: number }[] | undefined;
}

/** Applies new seconds and the new closing and drops what is left out; everything else stays. */
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
    // Seconds planned for a change from another move do not fit the move that now comes before.
    const same = comesAfter(moves, item.id) === comesAfter(before, item.id);
    const change = changes.get(item.id) ?? (same ? transitionSeconds : undefined);
    return change === undefined ? bare : { ...bare, transitionSeconds: change };
  });
  return { ...plan, closingSeconds, ...(openingSeconds === undefined ? {} : { openingSeconds }), items };
}
