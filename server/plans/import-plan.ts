/** Creates a plan from a file. It keeps the file's equipment, moves and standards, so that it stays the same plan. */
import { createPlanDoc } from "#lib/doc/create.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { chooseRoom, mayCreate, storePlan } from "./create-plan.ts";
import { badPlanFile } from "./refusals.ts";

/**
 * `file` is the text of a plan file, or its parsed JSON; `roomId` is where it will be taught, by default the first room.
 * Errors: 401, 403, 409 no-room, 422 no-such-room, 422 bad-plan-file with `details.pointer`.
 */
export function importPlan(app: Springline, actor: Actor, file: unknown, roomId?: string): Result<{ id: string }> {
  const author = mayCreate(actor);
  if (!author.ok) return author;
  const parsed = parsePlan(file);
  if (!parsed.ok) return badPlanFile(parsed);
  const room = chooseRoom(app, roomId);
  if (!room.ok) return room;
  const { title, lengthSeconds } = parsed.plan;
  const doc = createPlanDoc(parsed.plan, { carry: true });
  return storePlan(app, author.value, {
    doc,
    kind: "imported",
    title,
    lengthSeconds,
    roomId: room.value.id,
    team: false,
  });
}
