/** Joining by an invitation link: once, before it expires, with the address that was invited. */
import * as z from "zod";
import {
  type Invitation,
  insertAccount,
  type NewAccount,
  readInvitation,
  readPersonByEmail,
  returnAccount,
  settleInvitation,
  userIdByEmail,
} from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readStudio, writeSoleAuthorMaySign } from "#db/repos/studio-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceToMonths } from "#server/programme/announce-to-months.ts";
import { newPassword, personName } from "./fields.ts";
import { mayStill } from "./made-links.ts";
import {
  ALREADY_HERE,
  INVITATION_EXPIRED,
  INVITATION_MAKER_GONE,
  INVITATION_REVOKED,
  INVITATION_UNKNOWN,
  INVITATION_USED,
} from "./refusals.ts";
import { refuseSameName } from "./same-name.ts";
import { hashPassword } from "./sign-in.ts";

/** The address comes from the invitation: a body with an address is refused. */
export const joinSchema = z.strictObject({ name: personName, password: newPassword });
export type Join = z.infer<typeof joinSchema>;

export interface JoinView {
  readonly studio: string;
  readonly email: string;
  readonly name: string | null;
  readonly roles: readonly Role[];
}

/** What the joining page shows. Errors: 404 invitation-unknown, 410 invitation-used, -revoked, -expired. */
export function readJoin(app: Springline, id: string): Result<JoinView> {
  const open = openInvitation(app, id);
  if (!open.ok) return open;
  const { email, name, roles } = open.value;
  return ok({ studio: readStudio(app.db)?.name ?? "", email, name, roles });
}

/**
 * Creates the account and uses up the link in one write transaction, so that a link used twice at once creates one account.
 * Somebody who had left gets their old plans back. Errors: those of `readJoin`, 409 already-here and name-taken.
 */
export async function join(
  app: Springline,
  id: string,
  asked: Join,
): Promise<Result<{ userId: string; email: string }>> {
  const open = openInvitation(app, id);
  if (!open.ok) return open;
  const passwordHash = await hashPassword(app, asked.password);
  const joined = app.db.raw
    .transaction((): Result<{ userId: string; email: string }> => {
      const still = openInvitation(app, id);
      if (!still.ok) return still;
      const { email, roles } = still.value;
      if (readPersonByEmail(app.db, email)) return ALREADY_HERE;
      const before = userIdByEmail(app.db, email);
      const refused = refuseSameName(app.db, asked.name, before);
      if (refused) return refused;
      settleInvitation(app.db, id, "accepted");
      const userId = before ?? app.newId();
      const made = { id: userId, name: asked.name, email, passwordHash, roles, at: app.now() };
      if (before) returnAccount(app.db, made);
      else insertAccount(app.db, made);
      const subject = `person/${userId}`;
      const entry = {
        at: made.at,
        actorId: userId,
        subject,
        kind: "joined",
        body: { roles, again: before !== undefined },
      };
      addToRecord(app.db, entry);
      endSoleAuthorship(app, made);
      return ok({ userId, email });
    })
    .immediate();
  if (joined.ok) announceToMonths(app);
  return joined;
}

function openInvitation(app: Springline, id: string): Result<Invitation> {
  const found = readInvitation(app.db, id);
  if (!found) return INVITATION_UNKNOWN;
  if (found.status === "accepted") return INVITATION_USED;
  if (found.status === "revoked") return INVITATION_REVOKED;
  if (found.expiresAt <= app.now()) return INVITATION_EXPIRED;
  // Managers can give every role, so the roles of the invitation need no check of their own.
  return mayStill(app.db, found.inviterId, "people.manage") ? ok(found) : INVITATION_MAKER_GONE;
}

/** Once a second person can write plans, sign-off requires a second pair of eyes again. */
function endSoleAuthorship(app: Springline, { id, roles, at }: Pick<NewAccount, "id" | "roles" | "at">): void {
  if (!readStudio(app.db)?.soleAuthorMaySign || !roles.some((role) => WRITERS.includes(role))) return;
  writeSoleAuthorMaySign(app.db, false);
  addToRecord(app.db, { at, actorId: id, subject: "studio", kind: "sole-author", body: { may: false, joined: true } });
}
const WRITERS: readonly Role[] = ["trainee", "coach", "lead"];
