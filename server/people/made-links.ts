/**
 * An invitation, a reset link, a pairing code and a calendar address each pass on a right of the person who made them. They are
 * valid for as long as that person has the right: they end together with it, and the right is checked again when one is used.
 */
import type { Db } from "#db/connection.ts";
import { withdrawFeedsAfter } from "#db/repos/calendar-feed-repo.ts";
import { endCodesBy } from "#db/repos/device-repo.ts";
import { readPerson, revokeInvitationsBy } from "#db/repos/people-repo.ts";
import { listOpenResets, withdrawReset } from "#db/repos/reset-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import { can, type StudioAction } from "#lib/policy/can.ts";

/** Whether this person may do it now; false for somebody who has left. */
export function mayStill(db: Db, userId: string, action: StudioAction): boolean {
  const person = readPerson(db, userId);
  return person !== undefined && can({ kind: "person", id: userId, roles: person.roles }, action);
}

export interface Ending {
  /** The person who made them. */
  readonly by: string;
  /** The person who changed that person's roles or removed them. */
  readonly actorId: string;
  /** ms since the epoch. */
  readonly at: number;
}

/**
 * Inside the transaction that changed a person's roles or removed them: ends their unused links and codes that they could
 * not make any more, and adds the numbers to the studio's record.
 */
export function endMadeLinks(db: Db, { by, actorId, at }: Ending): void {
  const people = mayStill(db, by, "people.manage");
  const feeds = {
    ...(mayStill(db, by, "feed.own") ? {} : { coach: by }),
    // Whoever made them has seen their addresses.
    ...(mayStill(db, by, "feeds.manage") ? {} : { madeBy: by }),
  };
  const ended = {
    invitations: people ? 0 : revokeInvitationsBy(db, by),
    resets: people ? 0 : withdrawResetsBy(db, by),
    codes: mayStill(db, by, "devices.manage") ? 0 : endCodesBy(db, by, at),
    feeds: withdrawFeedsAfter(db, feeds, { actorId, at }),
  };
  if (Object.values(ended).every((count) => count === 0)) return;
  addStudioEvent(db, { at, actorId, kind: "links-ended", subject: by, data: ended });
}

function withdrawResetsBy(db: Db, by: string): number {
  const made = listOpenResets(db).filter((reset) => reset.madeBy === by);
  for (const reset of made) withdrawReset(db, reset);
  return made.length;
}
