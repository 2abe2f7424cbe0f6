/** Valid reset links, for the studio's managers: listing them without the link itself, and withdrawing one. */
import { FORMER_MEMBER, readPerson } from "#db/repos/people-repo.ts";
import { listOpenResets, withdrawReset } from "#db/repos/reset-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { BY_MAIL, BY_SERVER } from "./reset-password.ts";

type Studio = Pick<Springline, "db" | "now">;

/** Without the link itself, which is only shown to the person who made it, once. */
export interface OpenReset {
  readonly id: string;
  readonly forName: string;
  readonly forEmail: string;
  /** Null for a link made by the command on the server, or asked for on the sign-in page. */
  readonly byName: string | null;
  /** It was asked for on the sign-in page, and mailed. */
  readonly byMail: boolean;
  /** ms since the epoch. */
  readonly expiresAt: number;
}

/** The next to expire first. Errors: 403 no-right. */
export function listResetLinks(app: Studio, actor: Actor): Result<readonly OpenReset[]> {
  if (!can(actor, "people.manage")) return NO_RIGHT;
  return ok(openResets(app).flatMap((reset) => view(app, reset)));
}

/**
 * Withdraws one and notes it in the studio's record. Errors: 403 no-right, 404 not-found (also when it was used, withdrawn
 * or replaced, or has expired).
 */
export function withdrawResetLink(app: Studio, actor: Actor, id: string): Result<null> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  return app.db.raw
    .transaction((): Result<null> => {
      const reset = openResets(app).find((one) => one.id === id);
      if (!reset) return NOT_FOUND;
      withdrawReset(app.db, reset);
      const data = { linkBy: reset.madeBy };
      const event = { at: app.now(), actorId: actor.id, kind: "reset-link-withdrawn", subject: reset.userId } as const;
      addStudioEvent(app.db, { ...event, data });
      return ok(null);
    })
    .immediate();
}

const openResets = ({ db, now }: Studio) => listOpenResets(db).filter((reset) => reset.expiresAt > now());

function view({ db }: Studio, { id, userId, madeBy, expiresAt }: ReturnType<typeof openResets>[number]): OpenReset[] {
  const person = readPerson(db, userId);
  const byMail = madeBy === BY_MAIL;
  const byName = byMail || madeBy === BY_SERVER ? null : (readPerson(db, madeBy)?.name ?? FORMER_MEMBER.toLowerCase());
  return person ? [{ id, forName: person.name, forEmail: person.email, byName, byMail, expiresAt }] : [];
}
