/** A manager who says that they teach: one act, whenever they say it. */
import * as z from "zod";
import { listMembers, readPerson, setRoles } from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readStudio, writeSoleAuthorMaySign } from "#db/repos/studio-repo.ts";
import { type Actor, can, ROLES, type Role } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

/** Nothing is sent: it is about oneself. */
export const teachTooSchema = z.strictObject({});

export interface TeachesToo {
  readonly roles: readonly Role[];
  /** They may sign off what only they wrote, since nobody else writes plans here. */
  readonly signsAlone: boolean;
}

/**
 * Gives the manager who asks the lead's role beside their own, as the first run does for one who teaches. Where nobody else
 * writes plans, the studio's policy lets them sign off their own until somebody joins who does. Errors: 403 no-right.
 */
export function teachToo(app: Springline, actor: Actor): Result<TeachesToo> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  const done = app.db.raw
    .transaction((): Result<TeachesToo> => {
      const person = readPerson(app.db, actor.id);
      if (!person) return NOT_FOUND;
      const roles = ROLES.filter((role) => role === "lead" || person.roles.includes(role));
      const entry = { at: app.now(), actorId: actor.id };
      if (!person.roles.includes("lead")) {
        setRoles(app.db, actor.id, roles);
        const body = { roles, before: person.roles };
        addToRecord(app.db, { ...entry, subject: `person/${actor.id}`, kind: "roles", body });
      }
      const alone = isOnlyWriter(app, actor.id);
      if (alone && !readStudio(app.db)?.soleAuthorMaySign) {
        writeSoleAuthorMaySign(app.db, true);
        addToRecord(app.db, { ...entry, subject: "studio", kind: "sole-author", body: { may: true } });
      }
      return ok({ roles, signsAlone: alone });
    })
    .immediate();
  if (done.ok) app.documents.refreshAccess();
  return done;
}

/** Nobody else in the studio writes plans. */
const isOnlyWriter = (app: Pick<Springline, "db">, userId: string): boolean =>
  listMembers(app.db).every(({ id, roles }) => id === userId || !can({ kind: "person", id, roles }, "plan.create"));
