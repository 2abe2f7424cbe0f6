/** By which addresses and names somebody was known, and which invitations in the record were theirs. */
import type { Db } from "#db/connection.ts";
import { type FormerPerson, listKnownInvitations, listOthers } from "#db/repos/delete-person-repo.ts";
import { listErasable } from "#db/repos/record-repo.ts";
import type { RecordRow } from "#lib/record/chain.ts";
import { invitationDigest } from "./invitation-digest.ts";

/** Theirs now and before, in small letters; without those that somebody else has now. */
export function addressesOf(db: Db, who: FormerPerson): ReadonlySet<string> {
  const others = new Set(listOthers(db, who.id).map(({ email }) => folded(email)));
  const before = wordsAbout(db, who, "email-changed").filter((address) => !others.has(address));
  return new Set([folded(who.email), ...before]);
}

/**
 * Tells whether a row about an invitation was about one of theirs. A row names its invitation by a digest. One from before there
 * were any, or whose invitation the table does not know, holds the name, or the address where no name was given: an address is
 * theirs alone, a name is not, so of the invitations that the row can be about none may be to another address. Where the table knows none, as after an import, nobody else may be known by the name.
 */
export function invitationsOf(db: Db, who: FormerPerson, addresses: ReadonlySet<string>): (row: RecordRow) => boolean {
  const all = listKnownInvitations(db).map((one) => ({ ...one, isOwn: addresses.has(folded(one.email)) }));
  const called = (isOwn: boolean) => all.filter((one) => one.isOwn === isOwn).map(({ name }) => folded(name ?? ""));
  const byDigest = new Map(all.map((one) => [invitationDigest(one.id), one]));
  const names = new Set([folded(who.name), ...wordsAbout(db, who, "name-changed"), ...called(true)]);
  const ofOthers = new Set([...called(false), ...listOthers(db, who.id).map(({ name }) => folded(name))]);
  return (row) => {
    const [to] = textsOf(row, ["to"]);
    const [digest = ""] = textsOf(row, ["invitation"]);
    const named = byDigest.get(digest);
    if (named) return named.isOwn;
    if (to === undefined || addresses.has(to)) return to !== undefined;
    if (!names.has(to)) return false;
    // Of a row that names another invitation, none that is known is meant.
    const about = (digest === "" ? all : []).filter((one) => folded(one.name ?? "") === to && mayBeAbout(row, one));
    return about.length > 0 ? about.every(({ isOwn }) => isOwn) : !ofOthers.has(to);
  };
}

/** From the invitation's own time to its row's. */
const SAME_COMMAND_MS = 1000;

function mayBeAbout(
  { kind, at, actorId }: RecordRow,
  one: { readonly inviterId: string; readonly createdAt: number; readonly revoked: 0 | 1 },
): boolean {
  const age = at - one.createdAt;
  if (kind !== "invited") return one.revoked === 1 && age >= 0;
  return one.inviterId === actorId && age >= 0 && age < SAME_COMMAND_MS;
}

const wordsAbout = (db: Db, { id }: FormerPerson, kind: string): string[] =>
  listErasable(db)
    .filter((row) => row.subject === `person/${id}` && row.kind === kind)
    .flatMap((row) => textsOf(row, ["name", "email", "before"]));

function textsOf({ bodyJson }: RecordRow, fields: readonly string[]): string[] {
  const body = JSON.parse(bodyJson) as Readonly<Record<string, unknown>>;
  return fields
    .map((field) => body[field])
    .filter((part) => typeof part === "string")
    .map(folded);
}

/** As it is compared: what was typed may differ in spaces and in how accents are written. */
const folded = (text: string): string => text.normalize("NFC").replace(/\s+/g, " ").trim().toLowerCase();
