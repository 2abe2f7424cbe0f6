/** Creates a plan: its row, its document and the first line of its record, in one transaction. */

import type * as Y from "yjs";
import * as z from "zod";
import { addPlanEvent, type PlanEventKind } from "#db/repos/event-repo.ts";
import { insertPlan } from "#db/repos/plan-repo.ts";
import { listStudioRooms, readRoom, type StudioRoom } from "#db/repos/room-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { PLAN_FORMAT, type Plan } from "#lib/plan/schema.ts";
import { type Actor, can, type Person } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { typedLine } from "#server/base/typed-text.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { NO_ROOM_YET, NO_SUCH_ROOM } from "./refusals.ts";

const LENGTH = { min: 60, max: 14_400 };
export const newPlanSchema = z.strictObject({
  title: typedLine.min(1, "A plan needs a title.").max(200, "A title has at most 200 characters."),
  lengthSeconds: z
    .number()
    .int("The length is in whole seconds.")
    .min(LENGTH.min, "A class lasts at least one minute.")
    .max(LENGTH.max, "A class lasts at most four hours."),
  roomId: z.string().optional(),
  team: z.boolean().optional(),
});
export type NewPlanBody = z.infer<typeof newPlanSchema>;

/** An empty plan with one heading. Errors: 401, 403, 409 no-room, 422 no-such-room. */
export function createPlan(app: Springline, actor: Actor, body: NewPlanBody): Result<{ id: string }> {
  const author = mayCreate(actor);
  if (!author.ok) return author;
  const room = chooseRoom(app, body.roomId);
  if (!room.ok) return room;
  const plan: Plan = {
    format: PLAN_FORMAT,
    title: body.title,
    lengthSeconds: body.lengthSeconds,
    equipment: room.value.equipment,
    moves: {},
    items: [{ id: app.newId(), kind: "heading", title: "Warm-up" }],
  };
  const doc = createPlanDoc(plan, { carry: false });
  const head = { title: plan.title, lengthSeconds: plan.lengthSeconds, team: body.team ?? false };
  return storePlan(app, author.value, { doc, kind: "created", roomId: room.value.id, ...head });
}

/** Errors: 401 not-signed-in, 403 no-right. */
export function mayCreate(actor: Actor): Result<Person> {
  if (actor === null) return NOT_SIGNED_IN;
  return actor.kind === "person" && can(actor, "plan.create") ? ok(actor) : NO_RIGHT;
}

/** The room with this id, or the studio's first. Errors: 409 no-room, 422 no-such-room. */
export function chooseRoom(app: Pick<Springline, "db">, roomId: string | undefined): Result<StudioRoom> {
  if (roomId !== undefined) {
    const room = readRoom(app.db, roomId);
    return room ? ok(room) : NO_SUCH_ROOM;
  }
  const first = listStudioRooms(app.db)[0];
  return first ? ok(first) : NO_ROOM_YET;
}

export interface PlanToStore {
  readonly doc: Y.Doc;
  readonly kind: Extract<PlanEventKind, "created" | "imported" | "duplicated" | "from-edition" | "from-example">;
  readonly title: string;
  readonly lengthSeconds: number;
  readonly roomId: string;
  readonly team: boolean;
  /** What it was made from, for the record. */
  readonly note?: string;
  /** The edition that it was made from, as "<plan id>/<number>". */
  readonly origin?: string;
}

/** Stores the document as the bytes that it has now, and frees it. */
export function storePlan(app: Springline, author: Person, made: PlanToStore): Result<{ id: string }> {
  const id = app.newId();
  const at = app.now();
  const { doc, kind, note, ...head } = made;
  inTransaction(app.db, () => {
    insertPlan(app.db, { id, ownerId: author.id, at, ...head });
    app.documents.create(planDoc(id), doc, author.id);
    addPlanEvent(app.db, { planId: id, at, actorId: author.id, kind, note: note ?? null });
  });
  doc.destroy();
  return ok({ id });
}
