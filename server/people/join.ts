/** Joining by an invitation link: once, in time, under the address that was invited. */
import * as z from "zod";
import {
  type Invitation,
  insertAccount,
  readInvitation,
  readPersonByEmail,
  returnAccount,
  settleInvitation,
  userIdByEmail,
} from "#db/repos/people-repo.ts";
import { readStudio, writeSoleAuthorMaySign } from "#db/repos/studio-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { newPassword, personName } from "./fields.ts";
import { mayStill } from "./made-links.ts";
import { hashPassword } from "./sign-in.ts";

/** No address here: it is the invitation's, and a body that brings one is refused as a whole. */
export const joinSchema = z.strictObject({ name: personName, password: newPassword });
export type Join = z.infer<typeof joinSchema>;

export interface JoinView {
  readonly studio: string;
  readonly email: string;
  readonly name: string | null;
  readonly roles: readonly Role[];
}

const UNKNOWN = fail(
  404,
  "invitation-unknown",
  "This invitation link is not known here. Ask the manager for a new one.",
);
const USED = fail(
  410,
  "invitation-used",
  "This invitation link has been used. Sign in, or ask the manager for a new one.",
);
const REVOKED = fail(410, "invitation-revoked", "This invitation was taken back. Ask the manager for a new one.");
const MAKER_GONE = fail(
  410,
  "invitation-revoked",
  "Whoever made this invitation may not let people in any more. Ask the manager for a new one.",
);
const EXPIRED = fail(410, "invitation-expired", "This invitation link has run out. Ask the manager for a new one.");
const HERE = fail(409, "already-here", "This address already belongs to somebody of this studio. Sign in.");

/** What the joining page shows. Errors: 404 invitation-unknown, 410 invitation-used, -revoked, -expired. */
export function readJoin(app: Springline, id: string): Result<JoinView> {
  const open = openInvitation(app, id);
  if (!open.ok) return open;
  const { email, name, roles } = open.value;
  return ok({ studio: readStudio(app.db)?.name ?? "", email, name, roles });
}

/**
 * Makes the account and uses up the link in one write transaction, so a link opened twice at once makes one account.
 * Somebody who had left comes back to their old plans. Errors: those of `readJoin`, 409 already-here.
 */
export async function join(
  app: Springline,
  id: string,
  asked: Join,
): Promise<Result<{ userId: string; email: string }>> {
  const open = openInvitation(app, id);
  if (!open.ok) return open;
  const passwordHash = await hashPassword(app, asked.password);
  return app.db.raw
    .transaction((): Result<{ userId: string; email: string }> => {
      const still = openInvitation(app, id);
      if (!still.ok) return still;
      const { email, roles } = still.value;
      if (readPersonByEmail(app.db, email)) return HERE;
      settleInvitation(app.db, id, "accepted");
      const before = userIdByEmail(app.db, email);
      const userId = before ?? app.newId();
      const made = { id: userId, name: asked.name, email, passwordHash, roles, at: app.now() };
      if (before) returnAccount(app.db, made);
      else insertAccount(app.db, made);
      endSoleAuthorship(app, roles);
      return ok({ userId, email });
    })
    .immediate();
}

function openInvitation(app: Springline, id: string): Result<Invitation> {
  const found = readInvitation(app.db, id);
  if (!found) return UNKNOWN;
  if (found.status === "accepted") return USED;
  if (found.status === "revoked") return REVOKED;
  if (found.expiresAt <= app.now()) return EXPIRED;
  // Managers give every role: whoever may invite at all may give what the link names.
  return mayStill(app.db, found.inviterId, "people.manage") ? ok(found) : MAKER_GONE;
}

/** A one-person studio ends when a second person may write plans: then a second pair of eyes is asked for again. */
function endSoleAuthorship(app: Springline, roles: readonly Role[]): void {
  if (roles.some((role) => role === "trainee" || role === "coach" || role === "lead")) {
    writeSoleAuthorMaySign(app.db, false);
  }
}
