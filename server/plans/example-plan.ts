/** The example class, made for somebody to take apart. */
import { planIdsMade } from "#db/repos/event-repo.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { type Equipment, PLAN_FORMAT, type Plan } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import { EXAMPLE_CLASS } from "#lib/starter/example-class.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { chooseRoom, mayCreate, storePlan } from "./create-plan.ts";

/**
 * The one that this person has on their desk, or a new one in the studio's first room. Where the studio has other springs or
 * other moves the class brings the example's own, as a plan file would. Errors: 401, 403, 409 no-room.
 */
export function makeExample(app: Springline, actor: Actor): Result<{ id: string }> {
  const author = mayCreate(actor);
  if (!author.ok) return author;
  const known = ownExample(app, author.value.id);
  if (known !== undefined) return ok({ id: known });
  const room = chooseRoom(app, undefined);
  if (!room.ok) return room;
  const { id: roomId, equipment } = room.value;
  const { moves } = studioContext(app.db, roomId);
  const used = [...new Set(EXAMPLE_CLASS.items.filter(isMoveItem).map(({ move }) => move))];
  const carry = !hasSprings(equipment) || used.some((move) => !(move in moves));
  const own = used.flatMap((move) => {
    const known = STARTER_MOVES[move];
    return known ? [[move, known] as const] : [];
  });
  const plan: Plan = {
    format: PLAN_FORMAT,
    ...EXAMPLE_CLASS,
    equipment: carry ? STARTER_EQUIPMENT : equipment,
    moves: Object.fromEntries(own),
  };
  const doc = createPlanDoc(plan, { carry });
  const { title, lengthSeconds } = EXAMPLE_CLASS;
  return storePlan(app, author.value, { doc, kind: "from-example", title, lengthSeconds, roomId, team: false });
}

/** The example that lies on this person's desk. */
function ownExample(app: Pick<Springline, "db">, userId: string): string | undefined {
  const made = planIdsMade(app.db, "from-example");
  const lies = listPlanRows(app.db).filter((row) => row.deletedAt === null && row.archivedAt === null);
  return lies.find((row) => row.ownerId === userId && made.has(row.id))?.id;
}

/** Every spring that the example names is on the room's machines, as many as it hooks on. */
function hasSprings({ springs }: Equipment): boolean {
  return EXAMPLE_CLASS.items.filter(isMoveItem).every((item) =>
    Object.entries(item.springs ?? {}).every(([id, count]) => {
      const own = springs.find((spring) => spring.id === id);
      return own !== undefined && own.count >= count;
    }),
  );
}
