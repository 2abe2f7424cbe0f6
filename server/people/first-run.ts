/** The first run: creates the studio and its manager, once. */
import * as z from "zod";
import { putMove } from "#db/repos/move-repo.ts";
import { insertAccount } from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import { insertStudio, readStudio, type Studio, studioExists } from "#db/repos/studio-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT, STARTER_ROOM_NAME } from "#lib/starter/room.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { emailAddress, newPassword, personName, studioName, studioTown } from "./fields.ts";
import { STUDIO_EXISTS } from "./refusals.ts";
import { refuseSetUp } from "./set-up-code.ts";
import { hashPassword } from "./sign-in.ts";

export const firstRunSchema = z.strictObject({
  studio: studioName,
  town: studioTown.default(""),
  name: personName,
  email: emailAddress,
  password: newPassword,
  /** The code printed on the server's console, if one is required. */
  code: z.string().max(40).optional(),
  /** The manager teaches as well: they become a lead too, and may sign off plans that only they wrote. */
  teaches: z.boolean().default(false),
  /** Start with a library of moves and a first room with example machines. */
  starter: z.boolean().default(false),
});
export type FirstRun = z.infer<typeof firstRunSchema>;

/** Checked before the body is read. */
export const refuseFirstRun = ({ app }: { readonly app: Pick<Springline, "db"> }): Result<never> | undefined =>
  studioExists(app.db) ? STUDIO_EXISTS : undefined;

/**
 * Of two at once, one creates the studio and the other is refused: checking and creating are one write transaction. A
 * manager who teaches starts as the only author, so the studio's policy lets them sign off their own plans until somebody
 * joins who writes plans (`join.ts`). Errors: 409 studio-exists, 403 wrong-set-up-code.
 */
export async function firstRun(app: Springline, made: FirstRun): Promise<Result<{ userId: string }>> {
  if (studioExists(app.db)) return STUDIO_EXISTS;
  const refused = refuseSetUp(app, made.code ?? "");
  if (refused) return refused;
  const passwordHash = await hashPassword(app, made.password);
  const userId = app.newId();
  const at = app.now();
  const roles: readonly Role[] = made.teaches ? ["lead", "manager"] : ["manager"];
  return app.db.raw
    .transaction(() => {
      if (studioExists(app.db)) return STUDIO_EXISTS;
      insertStudio(app.db, { name: made.studio, town: made.town, soleAuthorMaySign: made.teaches, at });
      insertAccount(app.db, { id: userId, name: made.name, email: made.email, passwordHash, roles, at });
      const body = { roles, starter: made.starter, soleAuthorMaySign: made.teaches };
      addToRecord(app.db, { at, actorId: userId, subject: "studio", kind: "studio-made", body });
      if (made.starter) putStarter(app, at);
      return ok({ userId });
    })
    .immediate();
}

/** Inside the first run's transaction: a new studio gets all of it or none. */
function putStarter(app: Springline, at: number): void {
  for (const [id, move] of Object.entries(STARTER_MOVES)) putMove(app.db, id, move, at);
  insertRoom(app.db, { id: app.newId(), name: STARTER_ROOM_NAME, equipment: STARTER_EQUIPMENT });
}

/** The studio as any page may show it, also before signing in; undefined until the first run. */
export const presentStudio = (app: Pick<Springline, "db">): Studio | undefined => readStudio(app.db);
