/** How a manager handles people: lists them, changes their roles, ends their sessions, removes them. */
import * as z from "zod";
import {
  listMembers as allPeople,
  readPerson,
  removeAccess,
  type StudioPerson,
  setRoles,
} from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { dropOpenResetsOf } from "#db/repos/reset-repo.ts";
import { endSessionsOf } from "#db/repos/session-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can, type Person, type Role } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceToMonths } from "#server/programme/announce-to-months.ts";
import { roleList } from "./fields.ts";
import { endMadeLinks } from "./made-links.ts";
import { LAST_MANAGER } from "./refusals.ts";

export const rolesSchema = z.strictObject({ roles: roleList });

export interface PersonName {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

/** Everybody in the studio, with address and roles. Errors: 403 no-right. */
export function listPeople(app: Springline, actor: Actor): Result<readonly StudioPerson[]> {
  return can(actor, "people.manage") ? ok(allPeople(app.db)) : NO_RIGHT;
}

/** Names and roles without addresses, for choosing a coach or a person to share with. Errors: 403 no-right. */
export function listNames(app: Springline, actor: Actor): Result<readonly PersonName[]> {
  if (actor?.kind !== "person" || actor.roles.length === 0) return NO_RIGHT;
  return ok(allPeople(app.db).map(({ id, name, roles }) => ({ id, name, roles })));
}

/**
 * Sets all roles of a person. Open sockets get the new rights at once; links that the person may not make any more end.
 * Errors: 403 no-right, 404 not-found, 409 last-manager.
 */
export function changeRoles(
  app: Springline,
  actor: Actor,
  userId: string,
  roles: readonly Role[],
): Result<StudioPerson> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  const changed = app.db.raw
    .transaction((): Result<StudioPerson> => {
      const person = readPerson(app.db, userId);
      if (!person) return NOT_FOUND;
      if (!roles.includes("manager") && isLastManager(app, person)) return LAST_MANAGER;
      setRoles(app.db, userId, roles);
      note(app, actor, userId, { kind: "roles", body: { roles, before: person.roles } });
      endMadeLinks(app.db, { by: userId, actorId: actor.id, at: app.now() });
      return ok({ ...person, roles });
    })
    .immediate();
  if (changed.ok) tellOpenPages(app);
  return changed;
}

/** Signs a person out everywhere. People may do it to themselves, managers to anybody. Errors: 403 no-right, 404 not-found. */
export function endSessions(app: Springline, actor: Actor, userId: string): Result<{ ended: number }> {
  const own = actor?.kind === "person" && actor.id === userId;
  if (!own && !can(actor, "people.manage")) return NO_RIGHT;
  if (!readPerson(app.db, userId)) return NOT_FOUND;
  const ended = inTransaction(app.db, () => {
    const sessions = endSessionsOf(app.db, userId);
    if (actor?.kind === "person") note(app, actor, userId, { kind: "signed-out", body: { ended: sessions } });
    return sessions;
  });
  app.documents.refreshAccess();
  return ok({ ended });
}

/** Inside the transaction that changed something about a person. */
function note(
  app: Springline,
  actor: Person,
  userId: string,
  what: { readonly kind: string; readonly body: unknown },
): void {
  addToRecord(app.db, { at: app.now(), actorId: actor.id, subject: `person/${userId}`, ...what });
}

/**
 * Removes a person from the studio: their membership, password, sessions, links and codes go; their name and their plans
 * stay. Errors: 403 no-right, 404 not-found, 409 last-manager.
 */
export function removePerson(app: Springline, actor: Actor, userId: string): Result<null> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  const removed = app.db.raw.transaction(() => removeFromStudio(app, actor, userId)).immediate();
  if (removed.ok) tellOpenPages(app);
  return removed;
}

/** Inside the caller's transaction, in which a refusal is found before anything is written. Errors: 404, 409 last-manager. */
export function removeFromStudio(app: Springline, actor: Person, userId: string): Result<null> {
  const person = readPerson(app.db, userId);
  if (!person) return NOT_FOUND;
  if (isLastManager(app, person)) return LAST_MANAGER;
  removeAccess(app.db, userId);
  note(app, actor, userId, { kind: "removed", body: { before: person.roles } });
  endSessionsOf(app.db, userId);
  dropOpenResetsOf(app.db, userId);
  endMadeLinks(app.db, { by: userId, actorId: actor.id, at: app.now() });
  return ok(null);
}

/** Other rights, and other people who can be given classes. */
function tellOpenPages(app: Springline): void {
  app.documents.refreshAccess();
  announceToMonths(app);
}

/** Nobody else manages the studio. */
export function isLastManager(app: Pick<Springline, "db">, person: StudioPerson): boolean {
  const managers = allPeople(app.db).filter((other) => other.roles.includes("manager"));
  return person.roles.includes("manager") && managers.length === 1;
}
