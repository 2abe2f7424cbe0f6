/** Invitation links: the only way to join the studio after its first run. */
import { randomBytes } from "node:crypto";
import * as z from "zod";
import {
  type Invitation,
  insertInvitation,
  listPendingInvitations,
  readInvitation,
  readPersonByEmail,
  revokeInvitationsFor,
  settleInvitation,
} from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can, type Role } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { emailAddress, personName, roleList } from "./fields.ts";
import { invitationDigest } from "./invitation-digest.ts";
import { addressTaken } from "./refusals.ts";
import { refuseSameName } from "./same-name.ts";

export const inviteSchema = z.strictObject({ email: emailAddress, name: personName.optional(), roles: roleList });
export type Invite = z.infer<typeof inviteSchema>;

/** How long a link is valid, in ms. */
const INVITATION_MS = 14 * 24 * 60 * 60 * 1000;

export interface InvitationView {
  readonly id: string;
  readonly email: string;
  readonly name: string | null;
  readonly roles: readonly Role[];
  /** ms since the epoch. */
  readonly expiresAt: number;
  readonly expired: boolean;
  readonly link: string;
}

/**
 * Makes a link for one address; older links for it stop working. The manager sends the link: the program sends no mail.
 * Errors: 403 no-right, 409 already-here and name-taken.
 */
export function invite(app: Springline, actor: Actor, asked: Invite): Result<InvitationView> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  const now = app.now();
  const made = {
    id: randomBytes(24).toString("base64url"),
    email: asked.email,
    name: asked.name ?? null,
    roles: asked.roles,
    createdAt: now,
    expiresAt: now + INVITATION_MS,
  };
  return app.db.raw
    .transaction(() => {
      if (readPersonByEmail(app.db, asked.email)) {
        return addressTaken(asked.email);
      }
      const refused = asked.name === undefined ? undefined : refuseSameName(app.db, asked.name);
      if (refused) return refused;
      revokeInvitationsFor(app.db, asked.email);
      insertInvitation(app.db, { ...made, inviterId: actor.id });
      note(app, actor.id, "invited", made);
      return ok(view(app, made));
    })
    .immediate();
}

/** Unused links, newest first, including expired ones. Errors: 403 no-right. */
export function listInvitations(app: Springline, actor: Actor): Result<readonly InvitationView[]> {
  if (!can(actor, "people.manage")) return NO_RIGHT;
  return ok(listPendingInvitations(app.db).map((invitation) => view(app, invitation)));
}

/** Revokes a link. Errors: 403 no-right, 404 not-found (also when it was used or revoked before). */
export function revokeInvitation(app: Springline, actor: Actor, id: string): Result<null> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  return inTransaction(app.db, (): Result<null> => {
    const found = readInvitation(app.db, id);
    if (!found || !settleInvitation(app.db, id, "revoked")) return NOT_FOUND;
    note(app, actor.id, "invitation-revoked", found);
    return ok(null);
  });
}

/** Without the id, which is the link: a digest of it tells later whose row this is. */
function note(app: Springline, actorId: string, kind: string, { id, email, name, roles }: Shown): void {
  const body = { to: name ?? email, roles, invitation: invitationDigest(id) };
  addToRecord(app.db, { at: app.now(), actorId, subject: "studio", kind, body });
}

type Shown = Pick<Invitation, "id" | "email" | "name" | "roles" | "expiresAt">;

function view(app: Springline, made: Shown): InvitationView {
  const { id, email, name, roles, expiresAt } = made;
  return { id, email, name, roles, expiresAt, expired: expiresAt <= app.now(), link: `${app.env.origin}/join/${id}` };
}
