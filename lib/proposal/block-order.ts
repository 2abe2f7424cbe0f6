/** The order of a block as proposed, in the block as it is now. */
import { movedIds } from "#lib/plan/moved.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { PartOf } from "./parts.ts";
import type { PartVerdict } from "./script-steps.ts";

type Items = Pick<Plan, "items">;

/** Ids of a block in order; null for the items before the first heading. Undefined where the heading is gone. */
export function blockIds({ items }: Items, heading: string | null): readonly string[] | undefined {
  const from = heading === null ? -1 : items.findIndex(({ id, kind }) => id === heading && kind === "heading");
  if (heading !== null && from < 0) return undefined;
  const rest = items.slice(from + 1);
  const end = rest.findIndex(({ kind }) => kind === "heading");
  return rest.slice(0, end < 0 ? undefined : end).map(({ id }) => id);
}

/** What was added meanwhile stays behind the item that it follows now; what was taken out is left out. */
export function judgeOrder(
  now: readonly string[] | undefined,
  { was, becomes }: Pick<PartOf<"order">, "was" | "becomes">,
): PartVerdict<readonly string[]> {
  if (now === undefined) return { state: "changed", why: "The heading of this block was taken out of the plan." };
  const known = now.filter((id) => was.includes(id));
  const wanted = [...new Set(becomes)].filter((id) => known.includes(id));
  if (sameList(known, wanted)) return { state: "already", why: "The block is in this order already." };
  if (
    wanted.length !== known.length ||
    !sameList(
      known,
      was.filter((id) => known.includes(id)),
    )
  )
    return { state: "changed", why: "The items of this block were put into another order meanwhile." };
  return { state: "fits", step: withNew(now, wanted) };
}

function withNew(now: readonly string[], wanted: readonly string[]): readonly string[] {
  const list = [...wanted];
  for (const [place, id] of now.entries()) {
    if (list.includes(id)) continue;
    const above = now[place - 1];
    list.splice(above === undefined ? 0 : list.indexOf(above) + 1, 0, id);
  }
  return list;
}

/** The items with the block of that heading in this order, which holds all of the block's items. */
export function withBlockInOrder(plan: Items, heading: string | null, ids: readonly string[]): Plan["items"] {
  const block = new Set(blockIds(plan, heading));
  const byId = new Map(plan.items.map((item) => [item.id, item]));
  const placed = ids.flatMap((id) => (block.has(id) ? (byId.get(id) ?? []) : []));
  const rest = plan.items.filter(({ id }) => !block.has(id));
  const at = heading === null ? 0 : rest.findIndex(({ id }) => id === heading) + 1;
  return [...rest.slice(0, at), ...placed, ...rest.slice(at)];
}

/** The part for a block in another order; undefined where it is the same. */
export function orderPart(
  heading: string | null,
  was: readonly string[],
  becomes: readonly string[],
): PartOf<"order"> | undefined {
  return movedIds(was, becomes).size === 0
    ? undefined
    : { id: "order", kind: "order", heading, was: [...was], becomes: [...becomes] };
}

const sameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((id, i) => id === b[i]);
