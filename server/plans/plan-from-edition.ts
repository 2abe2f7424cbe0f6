/** A new plan that begins as a signed edition was. It keeps which one it came from. */
import { createPlanDoc } from "#lib/doc/create.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { readSignedEdition } from "#server/editions/editions.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { chooseRoom, mayCreate, storePlan } from "./create-plan.ts";

const TITLE_MAX = 200;

/**
 * It takes its moves, machines and standards from the studio as they are now, if the studio still has all that it needs;
 * otherwise it brings those of the edition, as a file would. The room is the edition's, or the studio's first. Errors: 401,
 * 403, 404, 409 edition-damaged, 409 no-room.
 */
export function planFromEdition(
  app: Springline,
  actor: Actor,
  { planId, number }: { readonly planId: string; readonly number: number },
): Result<{ id: string }> {
  const author = mayCreate(actor);
  if (!author.ok) return author;
  const found = readSignedEdition(app, actor, planId, number);
  if (!found.ok) return found;
  const { card } = found.value.card;
  const there = chooseRoom(app, card.room.id);
  const room = there.ok ? there : chooseRoom(app, undefined);
  if (!room.ok) return room;
  const { lengthSeconds } = card.plan;
  const plan = { ...card.plan, title: titleOf(card.plan.title, number) };
  const doc = createPlanDoc(plan, { carry: !hasAll(plan, studioContext(app.db, room.value.id)) });
  const origin = `${planId}/${number}`;
  const head = { title: plan.title, lengthSeconds, roomId: room.value.id, team: false };
  return storePlan(app, author.value, { doc, kind: "from-edition", note: origin, origin, ...head });
}

/** Every move and every spring that the plan uses. */
function hasAll(plan: Plan, { moves, equipment }: StudioContext): boolean {
  const springs = new Set(equipment.springs.map(({ id }) => id));
  return plan.items.every(
    (item) =>
      item.kind !== "move" ||
      (own(moves, item.move) !== undefined &&
        Object.entries(item.springs).every(([id, count]) => count === 0 || springs.has(id))),
  );
}

function titleOf(title: string, number: number): string {
  const suffix = ` (from edition ${number})`;
  // Without half a surrogate pair at the end.
  return `${title.slice(0, TITLE_MAX - suffix.length).replace(/[\uD800-\uDBFF]$/, "")}${suffix}`;
}
