/**
 * At least one row in every table that the invented studio leaves empty, all about one person: for tests of everything that a
 * studio keeps. Through the repositories, so that what the record speaks of stands in it.
 */

import { insertAcceptance } from "#db/repos/acceptance-repo.ts";
import { insertFeed } from "#db/repos/calendar-feed-repo.ts";
import { insertClassLogRemark } from "#db/repos/class-log-remark-repo.ts";
import { markLogsSeen, visitDesk } from "#db/repos/desk-repo.ts";
import { claimDevice, insertDevice } from "#db/repos/device-repo.ts";
import { addDocClient } from "#db/repos/doc-client-repo.ts";
import { writeOwnFormats } from "#db/repos/format-choice-repo.ts";
import { insertMail } from "#db/repos/mail-repo.ts";
import { insertMentions } from "#db/repos/mention-repo.ts";
import { insertMonthAcceptance } from "#db/repos/month-acceptance-repo.ts";
import { insertMonthEdition } from "#db/repos/month-edition-repo.ts";
import { putMonthReading } from "#db/repos/month-reading-repo.ts";
import { putNoticeChoice } from "#db/repos/notice-choice-repo.ts";
import { insertInvitation, listMembers, type StudioPerson } from "#db/repos/people-repo.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { putPlatesRead } from "#db/repos/plate-read-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { writeSetting } from "#db/repos/setting-repo.ts";
import { insertWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { canonicalJson, sha256Hex } from "#lib/canonical/canonical.ts";
import { NOTHING_OWN } from "#lib/formats/formats.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { compactDoc } from "#server/doc-log/stored-doc.ts";
import { storeReset } from "#server/people/reset-password.ts";
import { readMonthFileOf } from "#server/programme/read-month-file.ts";

/** Words that open something, or stand for it: none of them may leave. */
export const SECRETS = {
  session: "session-token-of-the-test",
  device: "hash-of-a-device-token",
  feed: "hash-of-a-calendar-secret",
  invitation: "id-of-an-invitation-link",
  mail: "v1.sealed.mail.password",
};

export const personCalled = (app: Pick<Springline, "db">, email: string): StudioPerson => {
  const found = listMembers(app.db).find((person) => person.email === email);
  if (!found) throw new Error(`nobody has ${email}`);
  return found;
};

/** Long because: one short block a table. */
export function fillEveryTable(app: Springline, userId: string): void {
  const { db } = app;
  const at = app.now();
  const manager = personCalled(app, "petra@tholepin.example").id;
  const signed = listPlanRows(db).find((row) => row.state === "signed-off");
  if (!signed) throw new Error("no plan is signed off");
  const planId = signed.id;
  const room = signed.roomId;
  const session = String(db.raw.prepare("select session_id from class_log").pluck().get());
  const comment = db.raw
    .prepare<[], { id: string; threadId: string }>("select id, thread_id as threadId from comment")
    .get();
  app.documents.withDoc(planDoc(planId), (doc) => compactDoc(db, `plan/${planId}`, doc, at));
  const file = readMonthFileOf(app, { kind: "person", id: userId, roles: ["lead"] }, "2026-11");
  if (!file.ok) throw new Error(file.error.message);
  inTransaction(db, () => {
    const accepted = { ruleId: "talk-too-long", findingKey: "k", message: "It talks.", reason: "It is meant to." };
    insertAcceptance(db, { id: "acceptance-1", planId, ...accepted, byId: userId, at });
    insertFeed(db, {
      id: "feed-1",
      kind: "coach",
      subject: userId,
      secretHash: SECRETS.feed,
      madeBy: userId,
      madeAt: at,
    });
    insertClassLogRemark(db, {
      sessionId: session,
      kind: "coach",
      coachId: userId,
      reason: null,
      actorId: manager,
      at,
    });
    markLogsSeen(db, userId, [session], at);
    visitDesk(db, userId, at);
    const device = { name: "Tablet", roomId: room, codeHash: "code", codeExpiresAt: at + 1000, createdBy: userId };
    insertDevice(db, { id: "device-1", ...device });
    claimDevice(db, "code", SECRETS.device, at);
    addDocClient(db, `plan/${planId}`, { clientId: 4_000_000_000, userId }, at);
    insertWithdrawal(db, { planId, number: 1, withdrawnBy: userId, withdrawnAt: at, reason: "A spring broke." });
    insertMail(db, { id: "mail-1", userId, notices: [1], madeAt: at, nextAt: at });
    if (comment) insertMentions(db, { commentId: comment.id, threadId: comment.threadId, userIds: [userId] });
    const finding = { rule: "short-recovery", findingId: "f", findingKey: "k", message: "Soon again." };
    insertMonthAcceptance(db, {
      id: "month-acceptance-1",
      month: "2026-11",
      ...finding,
      reason: "Known.",
      acceptedBy: userId,
      acceptedAt: at,
    });
    const fileJson = canonicalJson(file.value);
    const month = { month: "2026-11", hash: sha256Hex(fileJson), fileJson };
    const signing = { number: 1, findingsJson: "[]", acceptedJson: "[]", signedBy: userId, signedAt: at, note: null };
    insertMonthEdition(db, { ...month, ...signing });
    putMonthReading(db, { ...month, userId, at });
    writeOwnFormats(db, userId, { ...NOTHING_OWN, dates: "fr", force: "kgf" });
    putNoticeChoice(db, { userId, digestAt: "07:30", timeZone: "Europe/Lisbon", kinds: {}, digestSentAt: at });
    putPlatesRead(db, { planId, userId, at }, [{ itemId: "item-1", hash: "0".repeat(64) }]);
    storeReset(db, { person: { id: userId }, by: manager, at, origin: app.env.origin });
    const invited = { email: "new@tholepin.example", name: "Nora New", roles: ["coach"] as const };
    insertInvitation(db, {
      id: SECRETS.invitation,
      ...invited,
      createdAt: at,
      expiresAt: at + 1000,
      inviterId: userId,
    });
    addToRecord(db, {
      at,
      actorId: userId,
      subject: "studio",
      kind: "invited",
      body: { to: "Nora New", roles: ["coach"] },
    });
    writeSetting(db, "mail", { data: { host: "mail.example", sealedPassword: SECRETS.mail }, updatedAt: at });
    db.raw
      .prepare("insert into session (id, expires_at, token, created_at, updated_at, user_id) values (?, ?, ?, ?, ?, ?)")
      .run("session-1", at + 1e9, SECRETS.session, at, at, userId);
    db.raw
      .prepare("insert into plan_check values (?, 'g', 1, 's', 'p', null, null, 0, 0, 0, null) on conflict do nothing")
      .run(planId);
    // A number that was given and whose row is gone is never given again.
    db.raw
      .prepare("insert into notice (id, user_id, at, kind, data_json) values (9000, ?, ?, 'kind', '{}')")
      .run(userId, at);
    db.raw.prepare("delete from notice where id = 9000").run();
  });
}
