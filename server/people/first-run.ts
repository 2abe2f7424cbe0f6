/** The first run: makes the studio and its manager, once, while there is no studio. */
import * as z from "zod";
import { putMove } from "#db/repos/move-repo.ts";
import { insertAccount } from "#db/repos/people-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import { insertStudio, readStudio, type Studio, studioExists } from "#db/repos/studio-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT, STARTER_ROOM_NAME } from "#lib/starter/room.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { emailAddress, newPassword, personName } from "./fields.ts";
import { refuseSetUp } from "./set-up-code.ts";
import { hashPassword } from "./sign-in.ts";

export const firstRunSchema = z.strictObject({
  studio: z.string().trim().min(1, "Give the studio's name.").max(120, "That name is too long."),
  town: z.string().trim().max(120, "That name is too long.").default(""),
  name: personName,
  email: emailAddress,
  password: newPassword,
  /** As it stands on the server's console, where one is asked for. */
  code: z.string().max(40).optional(),
  /** Does the manager teach as well? Then they are a lead too, and may sign off what only they wrote. */
  teaches: z.boolean().default(false),
  /** Begin with a library of moves and a first room of example machines? */
  starter: z.boolean().default(false),
});
export type FirstRun = z.infer<typeof firstRunSchema>;

const ALREADY = fail(
  409,
  "studio-exists",
  "This studio is already set up. Sign in, or ask its manager for an invitation.",
);

/** Asked before anything that came is read: there is a studio. */
export const refuseFirstRun = ({ app }: { readonly app: Pick<Springline, "db"> }): Result<never> | undefined =>
  studioExists(app.db) ? ALREADY : undefined;

/**
 * Two at once: one makes the studio, the other is refused, because the look and the making are one write transaction.
 * A manager who teaches starts as the only author there is, so the house policy lets them sign their own plans; it is
 * taken back when somebody joins who writes plans (`join.ts`). Errors: 409 studio-exists, 403 wrong-set-up-code.
 */
export async function firstRun(app: Springline, made: FirstRun): Promise<Result<{ userId: string }>> {
  if (studioExists(app.db)) return ALREADY;
  const refused = refuseSetUp(app, made.code ?? "");
  if (refused) return refused;
  const passwordHash = await hashPassword(app, made.password);
  const userId = app.newId();
  const at = app.now();
  const roles: readonly Role[] = made.teaches ? ["lead", "manager"] : ["manager"];
  return app.db.raw
    .transaction(() => {
      if (studioExists(app.db)) return ALREADY;
      insertStudio(app.db, { name: made.studio, town: made.town, soleAuthorMaySign: made.teaches, at });
      insertAccount(app.db, { id: userId, name: made.name, email: made.email, passwordHash, roles, at });
      if (made.starter) putStarter(app, at);
      return ok({ userId });
    })
    .immediate();
}

/** Runs inside the first run's transaction: a new studio has all of it or none. */
function putStarter(app: Springline, at: number): void {
  for (const [id, move] of Object.entries(STARTER_MOVES)) putMove(app.db, id, move, at);
  insertRoom(app.db, { id: app.newId(), name: STARTER_ROOM_NAME, equipment: STARTER_EQUIPMENT });
}

/** The studio as every page may show it, before anybody signs in; undefined until the first run. */
export const presentStudio = (app: Pick<Springline, "db">): Studio | undefined => readStudio(app.db);
