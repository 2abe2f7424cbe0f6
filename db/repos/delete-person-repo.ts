/**
 * Deleting somebody's account for good: what is theirs alone goes, what others' work rests on stays under a pseudonym. Callers
 * provide the transaction.
 */
import type { Db } from "#db/connection.ts";

/** No address of anybody: names under `.invalid` belong to nobody (RFC 2606). */
const GONE = "@deleted.invalid";

export interface FormerPerson {
  readonly id: string;
  readonly name: string;
  readonly email: string;
}

/** People who have left and whose account was not deleted, by name. */
export const listFormerPeople = (db: Db): FormerPerson[] =>
  db.raw
    .prepare<[string], FormerPerson>(
      `SELECT id, name, email FROM user WHERE id NOT IN (SELECT user_id FROM member) AND email NOT LIKE '%' || ?
        ORDER BY name, id`,
    )
    .all(GONE);

/** Anybody whose account was not deleted, in the studio or not. */
export const readAccount = (db: Db, userId: string): FormerPerson | undefined =>
  db.raw
    .prepare<[string, string], FormerPerson>(
      "SELECT id, name, email FROM user WHERE id = ? AND email NOT LIKE '%' || ?",
    )
    .get(userId, GONE);

export const countDeletedPeople = (db: Db): number =>
  db.raw.prepare<[string], number>("SELECT count(*) FROM user WHERE email LIKE '%' || ?").pluck().get(GONE) ?? 0;

/**
 * Every column that names a person, decided about: `gone` rows are deleted with the account, `kept` rows go on naming the pseudonym.
 * A column that nobody has decided about fails `tests/unit/people/person-columns.test.ts`.
 */
export const PERSON_COLUMNS: Readonly<Record<string, "gone" | "kept">> = {
  "account.user_id": "gone",
  "session.user_id": "gone",
  "member.user_id": "gone",
  "notice.user_id": "gone",
  "notice_choice.user_id": "gone",
  "format_choice.user_id": "gone",
  "mail.user_id": "gone",
  "desk_visit.user_id": "gone",
  "plate_read.user_id": "gone",
  "plan_reading.user_id": "gone",
  "month_reading.user_id": "gone",
  "class_log_seen.user_id": "gone",
  "mention.user_id": "gone",
  "plan_share.user_id": "gone",
  "invitation.inviter_id": "kept",
  "plan.owner_id": "kept",
  "plan.handed_in_by": "kept",
  "plan_author.user_id": "kept",
  "plan_event.actor_id": "kept",
  "plan_moment.actor_id": "kept",
  "plan_round.offered_by": "kept",
  "plan_round.reader_id": "kept",
  "plan_round.ended_by": "kept",
  "edition.signed_by": "kept",
  "edition_withdrawal.withdrawn_by": "kept",
  "month_edition.signed_by": "kept",
  "month_acceptance.accepted_by": "kept",
  "month_acceptance.undone_by": "kept",
  "acceptance.by_id": "kept",
  "acceptance.ended_by": "kept",
  "comment.author_id": "kept",
  "proposal.by_id": "kept",
  "proposal.ended_by": "kept",
  "marks.user_id": "kept",
  "marks.by_id": "kept",
  "remark.created_by": "kept",
  "device.created_by": "kept",
  "calendar_feed.made_by": "kept",
  "calendar_feed.withdrawn_by": "kept",
  "class_log_remark.coach_id": "kept",
  "class_log_remark.actor_id": "kept",
  "doc_update.actor_id": "kept",
  "doc_client.user_id": "kept",
  "move_event.actor_id": "kept",
  "studio_event.actor_id": "kept",
  "record.actor_id": "kept",
};

interface Forgetting {
  readonly pseudonym: string;
  /** Theirs now and before. */
  readonly addresses: Iterable<string>;
  readonly at: number;
}

/** Replaces name and address by the pseudonym and deletes what is theirs alone. What is deleted is overwritten on the disk. */
export function forgetPerson(db: Db, who: FormerPerson, { pseudonym, addresses, at }: Forgetting): void {
  for (const [column, fate] of Object.entries(PERSON_COLUMNS)) {
    const [table, name] = column.split(".");
    if (fate === "gone") db.raw.prepare(`DELETE FROM "${table}" WHERE "${name}" = ?`).run(who.id);
  }
  db.raw.prepare("DELETE FROM verification WHERE json_extract(value, '$.userId') = ?").run(who.id);
  const uninvite = db.raw.prepare("DELETE FROM invitation WHERE lower(email) = lower(?)");
  for (const address of addresses) uninvite.run(address);
  // What a lead had opened to sign holds the names of all coaches: it is opened again.
  db.raw.prepare("DELETE FROM month_reading WHERE instr(file_json, ?) > 0").run(who.id);
  db.raw
    .prepare("UPDATE plan_round SET reader_id = NULL, read_since = NULL WHERE reader_id = ? AND outcome IS NULL")
    .run(who.id);
  db.raw
    .prepare("UPDATE user SET name = ?, email = ?, email_verified = 0, image = NULL, updated_at = ? WHERE id = ?")
    .run(pseudonym, `${who.id}${GONE}`, at, who.id);
}

/** An invitation as far as a row of the record can be told to be about it. */
export interface KnownInvitation {
  readonly id: string;
  readonly email: string;
  readonly name: string | null;
  readonly inviterId: string;
  readonly createdAt: number;
  readonly revoked: 0 | 1;
}

export const listKnownInvitations = (db: Db): KnownInvitation[] =>
  db.raw
    .prepare<[], KnownInvitation>(
      `SELECT id, email, name, inviter_id AS inviterId, created_at AS createdAt, status = 'revoked' AS revoked
        FROM invitation`,
    )
    .all();

/** Everybody with an account but one, former people too. */
export const listOthers = (db: Db, userId: string): FormerPerson[] =>
  db.raw.prepare<[string], FormerPerson>("SELECT id, name, email FROM user WHERE id <> ?").all(userId);

/** Runs `work` with deleted rows overwritten by zeros, not only taken off the lists. */
export function overwriting<T>(db: Db, work: () => T): T {
  const before = db.raw.pragma("secure_delete", { simple: true });
  db.raw.pragma("secure_delete = ON");
  try {
    return work();
  } finally {
    db.raw.pragma(`secure_delete = ${before}`);
  }
}

export interface OwnPlan {
  readonly id: string;
  readonly title: string;
}

/**
 * Plans that nobody but their owner has to do with: never offered, signed, shared or taught, written by them alone, with no word of
 * anybody else. Deleted ones too, which could be restored.
 */
export const plansOfNobodyElse = (db: Db, userId: string): OwnPlan[] =>
  db.raw
    .prepare<[{ userId: string }], OwnPlan>(
      `SELECT id, title FROM plan WHERE owner_id = @userId AND team = 0
        AND NOT EXISTS (SELECT 1 FROM edition WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM plan_moment WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM plan_round WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM plan_share WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM plan_author WHERE plan_id = plan.id AND user_id <> @userId)
        AND NOT EXISTS (SELECT 1 FROM acceptance WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM marks WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM proposal WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM class_log WHERE plan_id = plan.id)
        AND NOT EXISTS (SELECT 1 FROM comment JOIN thread ON thread.id = comment.thread_id
          WHERE thread.plan_id = plan.id AND comment.author_id <> @userId)
        ORDER BY title, id`,
    )
    .all({ userId });

/** Deletes such a plan with its document and threads. What happened to it stays in the record, without its words. */
export function deletePlanForGood(db: Db, planId: string): void {
  const name = `plan/${planId}`;
  const run = (sql: string, key: string) => db.raw.prepare(sql).run(key);
  for (const table of ["doc_update", "doc_snapshot", "doc_client", "document"])
    run(`DELETE FROM ${table} WHERE name = ?`, name);
  run("DELETE FROM mention WHERE thread_id IN (SELECT id FROM thread WHERE plan_id = ?)", planId);
  run("DELETE FROM comment WHERE thread_id IN (SELECT id FROM thread WHERE plan_id = ?)", planId);
  for (const table of ["thread", "plan_author", "plan_check", "plan_reading", "plate_read", "notice"])
    run(`DELETE FROM ${table} WHERE plan_id = ?`, planId);
  run("DELETE FROM plan WHERE id = ?", planId);
}

/** Every plan of theirs gets another owner. Returns how many. */
export const handPlansOver = (db: Db, from: string, to: string): number =>
  db.raw.prepare("UPDATE plan SET owner_id = ? WHERE owner_id = ?").run(to, from).changes;

/** What others' work rests on, in numbers. */
export interface KeptWork {
  readonly plans: number;
  readonly editions: number;
  readonly signatures: number;
  readonly comments: number;
  readonly marks: number;
  /** Signed months, which hold the names of their coaches. */
  readonly months: number;
}

export const countKeptWork = (db: Db, userId: string): KeptWork =>
  db.raw
    .prepare<[{ userId: string }], KeptWork>(
      `SELECT (SELECT count(*) FROM plan WHERE owner_id = @userId) AS plans,
        (SELECT count(*) FROM edition JOIN plan ON plan.id = edition.plan_id WHERE plan.owner_id = @userId) AS editions,
        (SELECT count(*) FROM edition WHERE signed_by = @userId) AS signatures,
        (SELECT count(*) FROM comment WHERE author_id = @userId) AS comments,
        (SELECT count(*) FROM marks WHERE user_id = @userId) AS marks,
        (SELECT count(*) FROM month_edition WHERE instr(file_json, @userId) > 0) AS months`,
    )
    .get({ userId }) ?? { plans: 0, editions: 0, signatures: 0, comments: 0, marks: 0, months: 0 };
