/** A plan from a file. Its equipment, moves and standards come with it, so that it stays the plan that it was. */
import { createPlanDoc } from "#lib/doc/create.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import type { Actor } from "#lib/policy/can.ts";
import { fail, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { chooseRoom, mayCreate, storePlan } from "./create-plan.ts";

/**
 * `file` is the text of a plan file or its parsed JSON, `roomId` where it is to be taught (the first room when left out).
 * Errors: 401, 403, 409 no-room, 422 no-such-room, 422 bad-plan-file with `details.pointer`.
 */
export function importPlan(app: Springline, actor: Actor, file: unknown, roomId?: string): Result<{ id: string }> {
  const author = mayCreate(actor);
  if (!author.ok) return author;
  const parsed = parsePlan(file);
  if (!parsed.ok) {
    const message = `This plan file cannot be read, and nothing was added: ${parsed.message}.`;
    return fail(422, "bad-plan-file", message, { pointer: parsed.pointer, message: parsed.message });
  }
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
