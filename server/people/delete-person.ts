/**
 * Deletes somebody's account for good. Name, address, password, sessions and what is about them alone go; plans, comments and
 * signatures that others' work rests on keep a pseudonym as their author. One transaction; the record tells of it by the pseudonym.
 */
import { createHash } from "node:crypto";
import * as z from "zod";
import type { Db } from "#db/connection.ts";
import { emptyLog } from "#db/file/checkpoints.ts";
import {
  countDeletedPeople,
  countKeptWork,
  deletePlanForGood,
  type FormerPerson,
  forgetPerson,
  handPlansOver,
  type KeptWork,
  listFormerPeople,
  overwriting,
  plansOfNobodyElse,
  readAccount,
} from "#db/repos/delete-person-repo.ts";
import { listMembers, readPerson } from "#db/repos/people-repo.ts";
import { addToRecord, eraseWords, listErasable } from "#db/repos/record-repo.ts";
import { type Actor, can, type Person, type Role } from "#lib/policy/can.ts";
import type { RecordRow } from "#lib/record/chain.ts";
import { type ErasedRow, erasedDigest, PERSON_DELETED } from "#lib/record/erased.ts";
import { fail, NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import { planDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceToMonths } from "#server/programme/announce-to-months.ts";
import { addressesOf, invitationsOf } from "./former-names.ts";
import { endMadeLinks } from "./made-links.ts";
import { isLastManager, removeFromStudio } from "./manage-people.ts";
import { DELETION_CHANGED, LAST_MANAGER, NAME_NOT_TYPED, NOT_A_WRITER } from "./refusals.ts";

export const deletionSchema = z.strictObject({
  /** The name, typed again. */
  name: z.string().max(200),
  /** Who gets their plans; null: what only they could see is deleted, the rest keeps its author under the pseudonym. */
  plansTo: z.string().min(1).max(64).nullable(),
  /** How many plans were said to be deleted. */
  privatePlans: z.number().int().nonnegative(),
});
export type DeletionAsked = z.infer<typeof deletionSchema>;

export interface DeletionView {
  readonly id: string;
  readonly name: string;
  /** What stands in the place of the name afterwards. */
  readonly pseudonym: string;
  /** Plans that only they can see. */
  readonly privatePlans: readonly string[];
  readonly kept: KeptWork;
  /** Who can be given the plans. */
  readonly heirs: readonly { readonly id: string; readonly name: string }[];
}

/** What would go and what would stay, before anybody decides. Errors: 403 no-right, 404 not-found, 409 last-manager. */
export function readDeletion(app: Pick<Springline, "db">, actor: Actor, userId: string): Result<DeletionView> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  const who = readAccount(app.db, userId);
  if (!who) return NOT_FOUND;
  const member = readPerson(app.db, userId);
  if (member && isLastManager(app, member)) return LAST_MANAGER;
  const own = plansOfNobodyElse(app.db, userId);
  const kept = countKeptWork(app.db, userId);
  return ok({
    ...{ id: userId, name: who.name, pseudonym: pseudonymOf(app.db, userId) },
    ...{ privatePlans: own.map(({ title }) => title), kept: { ...kept, plans: kept.plans - own.length } },
    heirs: writersBeside(app.db, userId),
  });
}

/** Everybody whose account was not deleted but who has left. Errors: 403 no-right. */
export const listFormer = (app: Pick<Springline, "db">, actor: Actor): Result<readonly FormerPerson[]> =>
  can(actor, "people.manage") ? ok(listFormerPeople(app.db)) : NO_RIGHT;

const writersBeside = (db: Db, userId: string) =>
  listMembers(db)
    .filter(({ id, roles }) => id !== userId && can({ kind: "person", id, roles }, "plan.create"))
    .map(({ id, name }) => ({ id, name }));

/**
 * Sockets and sessions of the person are refused at once, pages of the plans that went are closed. Errors: 403 no-right, 404
 * not-found, 409 last-manager, not-confirmed, deletion-changed, not-a-writer, and 503 when a plan's last words cannot be saved.
 */
export function deletePerson(
  app: Springline,
  actor: Actor,
  userId: string,
  asked: DeletionAsked,
): Result<{ pseudonym: string }> {
  if (!can(actor, "people.manage") || actor?.kind !== "person") return NO_RIGHT;
  const settled = settleOpenPlans(app, userId);
  if (!settled.ok) return settled;
  const own = plansOfNobodyElse(app.db, userId);
  const deleted = overwriting(app.db, () =>
    app.db.raw.transaction(() => deleteNow(app, { actor, userId, asked })).immediate(),
  );
  if (!deleted.ok) return deleted;
  // Their own pages are told of the session first.
  app.documents.refreshAccess();
  leaveNoTrace(app, asked.plansTo === null ? own.map(({ id }) => id) : []);
  announceToMonths(app);
  return deleted;
}

/** Of the plans that went: neither in memory nor in the index of words, and nothing in the write-ahead logs. */
function leaveNoTrace(app: Springline, planIds: readonly string[]): void {
  for (const id of planIds) app.documents.drop(planDoc(id));
  try {
    if (planIds.length > 0) app.words.erase(planIds);
    emptyLog(app.db.raw);
  } catch (err) {
    // The account is deleted. The index drops what is gone when somebody next looks for words; the log is used again from its start.
    app.log.error({ err }, "what was deleted may stand in the index of words or in a log for a while");
  }
}

/** What waits in memory goes to the disk first: after the deletion there is nothing that it could belong to. */
function settleOpenPlans(app: Springline, userId: string): Result<null> {
  try {
    for (const { id } of plansOfNobodyElse(app.db, userId)) app.documents.withDoc(planDoc(id), () => null);
    return ok(null);
  } catch (error) {
    if (unavailableReason(error) === undefined) throw error;
    return fail(503, "storage-failing", "The server cannot save at the moment. Nothing was deleted: try again.");
  }
}

interface Deleting {
  readonly actor: Person;
  readonly userId: string;
  readonly asked: DeletionAsked;
}

/** Inside the transaction: a refusal is found before anything is written. */
function deleteNow(app: Springline, { actor, userId, asked }: Deleting): Result<{ pseudonym: string }> {
  const { db } = app;
  const [who, at] = [readAccount(db, userId), app.now()];
  if (!who || !readPerson(db, actor.id)) return NOT_FOUND;
  if (!isSame(asked.name, who.name)) return NAME_NOT_TYPED;
  const own = plansOfNobodyElse(db, userId);
  if (own.length !== asked.privatePlans) return DELETION_CHANGED;
  if (asked.plansTo !== null && !writersBeside(db, userId).some(({ id }) => id === asked.plansTo)) return NOT_A_WRITER;
  const pseudonym = pseudonymOf(db, userId);
  const removed = readPerson(db, userId) ? removeFromStudio(app, actor, userId) : ok(null);
  if (!removed.ok) return removed;
  endMadeLinks(db, { by: userId, actorId: actor.id, at });
  if (asked.plansTo === null) for (const { id } of own) deletePlanForGood(db, id);
  const handed = asked.plansTo === null ? 0 : handPlansOver(db, userId, asked.plansTo);
  const addresses = addressesOf(db, who);
  const erased = eraseNames(db, who, addresses);
  forgetPerson(db, who, { pseudonym, addresses, at });
  const plans = asked.plansTo === null ? own.length : 0;
  const body = { pseudonym, plans, handed, plansTo: asked.plansTo, erased };
  addToRecord(db, { at, actorId: actor.id, subject: `person/${userId}`, kind: PERSON_DELETED, body });
  return ok({ pseudonym });
}

const isSame = (typed: string, name: string): boolean => plain(typed) === plain(name);
const plain = (text: string): string => text.normalize("NFC").replace(/\s+/g, " ").trim();

const WORDS: readonly (readonly [Role, string])[] = [
  ["lead", "lead"],
  ["coach", "coach"],
  ["trainee", "trainee"],
  ["manager", "manager"],
  ["crew", "crew member"],
];

/** "Former coach 3": numbered through all of them, so that no two are the same. */
function pseudonymOf(db: Db, userId: string): string {
  const roles = readPerson(db, userId)?.roles ?? [];
  const word = WORDS.find(([role]) => roles.includes(role))?.[1] ?? "colleague";
  return `Former ${word} ${countDeletedPeople(db) + 1}`;
}

/** Takes the words out of rows that are about the person or an invitation of theirs; the row of the deletion names them. */
function eraseNames(db: Db, who: FormerPerson, addresses: ReadonlySet<string>): ErasedRow[] {
  const isTheirs = invitationsOf(db, who, addresses);
  return listErasable(db)
    .filter((row) => isAbout(row, who) || (isInvitation(row) && isTheirs(row)))
    .map((row) => {
      eraseWords(db, row.seq);
      return { seq: row.seq, sha256: erasedDigest(row, sha256) };
    });
}

const isInvitation = ({ kind }: RecordRow): boolean => kind.startsWith("invit");
const isAbout = (row: RecordRow, { id }: FormerPerson): boolean => row.subject === `person/${id}` && !isInvitation(row);
const sha256 = (text: string): string => createHash("sha256").update(text, "utf8").digest("hex");
