/**
 * Forgotten passwords. A manager, or the command on the server, makes a link that works once and for a day. The person it is
 * for chooses the new password, which the maker never learns. Making and using a link are noted in the studio's record.
 */
import { randomBytes } from "node:crypto";
import * as z from "zod";
import type { Db } from "#db/connection.ts";
import { readPerson, type StudioPerson } from "#db/repos/people-repo.ts";
import {
  dropOpenResetsOf,
  forgetResets,
  insertReset,
  readReset,
  type StoredReset,
  setPasswordHash,
  spendReset,
} from "#db/repos/reset-repo.ts";
import { endSessionsOf } from "#db/repos/session-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { hashToken } from "#server/auth/device.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { newPassword } from "./fields.ts";
import { mayStill } from "./made-links.ts";
import {
  OWN_PASSWORD,
  RESET_EXPIRED,
  RESET_MAKER_GONE,
  RESET_UNKNOWN,
  RESET_USED,
  RESET_WITHDRAWN,
} from "./refusals.ts";
import { hashPassword } from "./sign-in.ts";

/** How long a reset link is valid, in ms. */
export const RESET_MS = 24 * 60 * 60 * 1000;
/** How long an expired link is still recognised as expired, in ms. */
const REMEMBERED_MS = 30 * RESET_MS;
/** Stands in the record for links made by the command on the server. */
export const BY_SERVER = "server";
/** The same for links that somebody asked for on the sign-in page, which go to their address and nowhere else. */
export const BY_MAIL = "mail";

/** The person comes from the link: a body with a person or an address is refused. */
export const resetSchema = z.strictObject({ password: newPassword });

export interface ResetLink {
  readonly link: string;
  /** ms since the epoch. */
  readonly expiresAt: number;
}

export interface ResetView {
  readonly studio: string;
  readonly name: string;
  readonly email: string;
}

/**
 * Makes a link for anybody but oneself: access to a manager's open page must not be enough to change that manager's
 * password. Other managers are included, since managers can remove each other anyway. Errors: 403 no-right, 404, 409
 * own-password.
 */
export function makeResetLink(app: Springline, actor: Actor, userId: string): Result<ResetLink> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  if (actor.id === userId) return OWN_PASSWORD;
  return app.db.raw
    .transaction((): Result<ResetLink> => {
      const person = readPerson(app.db, userId);
      return person
        ? ok(storeReset(app.db, { person, by: actor.id, at: app.now(), origin: app.env.origin }))
        : NOT_FOUND;
    })
    .immediate();
}

export interface Making {
  readonly person: Pick<StudioPerson, "id">;
  readonly by: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly origin: string;
  /** A day when left out. */
  readonly lastsMs?: number;
}

/**
 * Inside the caller's transaction. Older links of the person stop working; one that anybody can ask for takes no other's place
 * than its like.
 */
export function storeReset(db: Db, { person, by, at, origin, lastsMs = RESET_MS }: Making): ResetLink {
  const token = randomBytes(24).toString("base64url");
  const expiresAt = at + lastsMs;
  forgetResets(db, at - REMEMBERED_MS);
  dropOpenResetsOf(db, person.id, by === BY_MAIL ? BY_MAIL : undefined);
  const id = randomBytes(12).toString("base64url");
  insertReset(db, { id, tokenHash: hashToken(token), userId: person.id, madeBy: by, at, expiresAt });
  const [actorId, kind] = by === BY_MAIL ? ([BY_SERVER, "reset-asked"] as const) : ([by, "reset-link"] as const);
  addStudioEvent(db, { at, actorId, kind, subject: person.id, data: { expiresAt } });
  return { link: `${origin}/reset/${token}`, expiresAt };
}

/** The person that the link is for. Errors: 404 reset-unknown, 410 reset-used, -withdrawn, -expired. */
export function readResetLink(app: Pick<Springline, "db" | "now">, token: string): Result<ResetView> {
  const open = openReset(app, token);
  if (!open.ok) return open;
  const { name, email } = open.value.person;
  return ok({ studio: readStudio(app.db)?.name ?? "", name, email });
}

/** Sets the password, uses up the link and ends every session of the person, in one step. Errors: as `readResetLink`. */
export async function resetPassword(
  app: Springline,
  token: string,
  password: string,
): Promise<Result<{ readonly userId: string; readonly email: string }>> {
  const before = openReset(app, token);
  if (!before.ok) return before;
  const passwordHash = await hashPassword(app, password);
  const done = app.db.raw
    .transaction((): Result<{ userId: string; email: string }> => {
      const open = openReset(app, token);
      if (!open.ok) return open;
      const { person, reset } = open.value;
      const at = app.now();
      if (!setPasswordHash(app.db, person.id, passwordHash, at)) return RESET_UNKNOWN;
      spendReset(app.db, reset);
      dropOpenResetsOf(app.db, person.id);
      const ended = endSessionsOf(app.db, person.id);
      const data = { linkBy: reset.madeBy, ended };
      addStudioEvent(app.db, { at, actorId: person.id, kind: "password-reset", subject: person.id, data });
      return ok({ userId: person.id, email: person.email });
    })
    .immediate();
  if (done.ok) app.documents.refreshAccess();
  return done;
}

function openReset(
  app: Pick<Springline, "db" | "now">,
  token: string,
): Result<{ readonly reset: StoredReset; readonly person: StudioPerson }> {
  const reset = readReset(app.db, hashToken(token));
  const person = reset && readPerson(app.db, reset.userId);
  if (!reset || !person) return RESET_UNKNOWN;
  if (reset.used) return RESET_USED;
  if (reset.withdrawn) return RESET_WITHDRAWN;
  if (reset.expiresAt <= app.now()) return RESET_EXPIRED;
  const counts =
    reset.madeBy === BY_SERVER || reset.madeBy === BY_MAIL || mayStill(app.db, reset.madeBy, "people.manage");
  return counts ? ok({ reset, person }) : RESET_MAKER_GONE;
}
