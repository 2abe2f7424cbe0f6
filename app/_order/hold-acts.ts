/** Acts on what holds an item to its place: each one undo step, said in one sentence. */
import { newId } from "#app/_plan/new-id.ts";
import { placedName } from "#app/_plan/placed-name.ts";
import type { PlanSession } from "#app/_plan/session.ts";
import { leaveTie, setComesAfter, splitTie, tieItems } from "#lib/doc/order-constraints.ts";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";

/** Ties an item to the move above it, or parts it from that. */
export function setTied(s: PlanSession, item: MoveItem, above: MoveItem, on: boolean): void {
  const done = s.act((w) => {
    if (on) tieItems(w, above.id, item.id, newId());
    else splitTie(w, item.id, newId());
  });
  const { plan } = s.getSnapshot();
  const [name, other] = [placedName(plan, item), placedName(plan, above)];
  if (done) s.say(on ? `${name} stays next to ${other}.` : `${name} may part from ${other}.`);
}

export function leave(s: PlanSession, item: MoveItem): void {
  if (s.act((w) => leaveTie(w, item.id)))
    s.say(`${placedName(s.getSnapshot().plan, item)} is tied to nothing any more.`);
}

export function setAfter(s: PlanSession, item: MoveItem, other: PlanItem, on: boolean): void {
  if (!s.act((w) => setComesAfter(w, item.id, other.id, on))) return;
  const { plan } = s.getSnapshot();
  const [name, first] = [placedName(plan, item), placedName(plan, other)];
  s.say(on ? `${name} comes after ${first}.` : `${name} need not come after ${first}.`);
}
