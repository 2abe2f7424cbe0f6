/**
 * Links and codes count for as long as whoever made them may make them: an invitation, a reset link and a pairing code
 * each hand on a right that their maker has. Ended with that right, and asked about again when one is used.
 */
import type { Db } from "#db/connection.ts";
import { endCodesBy } from "#db/repos/device-repo.ts";
import { readPerson, revokeInvitationsBy } from "#db/repos/people-repo.ts";
import { listOpenResets, withdrawReset } from "#db/repos/reset-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import { can, type StudioAction } from "#lib/policy/can.ts";

/** May the person with this id do it now? Nobody who has left may. */
export function mayStill(db: Db, userId: string, action: StudioAction): boolean {
  const person = readPerson(db, userId);
  return person !== undefined && can({ kind: "person", id: userId, roles: person.roles }, action);
}

export interface Ending {
  /** Who made them. */
  readonly by: string;
  /** Who changed the maker's roles or took them out. */
  readonly actorId: string;
  /** ms since the epoch. */
  readonly at: number;
}

/**
 * Inside the transaction that changed a person's roles or took them out: what they made, nobody used and they could not
 * make now stops working, and the house's record says how much of it there was.
 */
export function endMadeLinks(db: Db, { by, actorId, at }: Ending): void {
  const people = mayStill(db, by, "people.manage");
  const ended = {
    invitations: people ? 0 : revokeInvitationsBy(db, by),
    resets: people ? 0 : withdrawResetsBy(db, by),
    codes: mayStill(db, by, "devices.manage") ? 0 : endCodesBy(db, by, at),
  };
  if (Object.values(ended).every((count) => count === 0)) return;
  addStudioEvent(db, { at, actorId, kind: "links-ended", subject: by, data: ended });
}

function withdrawResetsBy(db: Db, by: string): number {
  const made = listOpenResets(db).filter((reset) => reset.madeBy === by);
  for (const reset of made) withdrawReset(db, reset);
  return made.length;
}
