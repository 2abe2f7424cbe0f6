/** Tables of reading a plan: rounds, what was read, proposals, accepted findings, marks, notices, the chained record. */
import { index, integer, primaryKey, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";

/** A round of reading: from offering a plan to its return, its sign-off or its being taken back. */
export const planRoundTable = sqliteTable(
  "plan_round",
  {
    planId: text("plan_id").notNull(),
    /** 1, 2, ... in a plan. */
    number: integer("number").notNull(),
    offeredBy: text("offered_by").notNull(),
    offeredAt: integer("offered_at").notNull(),
    /** The lead who took it from the queue; null while nobody has. */
    readerId: text("reader_id"),
    readSince: integer("read_since"),
    /** How it ended; null while it is open. */
    outcome: text("outcome", { enum: ["returned", "signed", "taken-back"] }),
    endedBy: text("ended_by"),
    endedAt: integer("ended_at"),
    /** Of a return: at most three sentences, JSON. */
    mainPointsJson: text("main_points_json").notNull().default("[]"),
    /** The edition that it ended in. */
    edition: integer("edition"),
  },
  (t) => [primaryKey({ columns: [t.planId, t.number] })],
);

/** The texts of moments, one for each hash: canonical JSON of a plan, RFC 8785. Written once. */
export const planTextTable = sqliteTable(
  "plan_text",
  { planId: text("plan_id").notNull(), hash: text("hash").notNull(), planJson: text("plan_json").notNull() },
  (t) => [primaryKey({ columns: [t.planId, t.hash] })],
);

/** A plan as it was at one step of its rounds: text, findings, threads, note, who and when. Append-only. */
export const planMomentTable = sqliteTable(
  "plan_moment",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    planId: text("plan_id").notNull(),
    round: integer("round").notNull(),
    kind: text("kind", { enum: ["offered", "returned", "signed", "withdrawn", "taken-back"] }).notNull(),
    at: integer("at").notNull(),
    actorId: text("actor_id").notNull(),
    note: text("note"),
    hash: text("hash").notNull(),
    findingsJson: text("findings_json").notNull(),
    /** Each thread with whether it was settled and how many comments it had; comments themselves are never changed. */
    threadsJson: text("threads_json").notNull(),
  },
  (t) => [index("plan_moment_plan").on(t.planId, t.id)],
);

/** What a lead has read of a plan, plate by plate: the hash of the item as it was then. */
export const plateReadTable = sqliteTable(
  "plate_read",
  {
    planId: text("plan_id").notNull(),
    userId: text("user_id").notNull(),
    itemId: text("item_id").notNull(),
    hash: text("hash").notNull(),
    at: integer("at").notNull(),
  },
  (t) => [primaryKey({ columns: [t.planId, t.userId, t.itemId] })],
);

/** When somebody last saw their desk, and the visit before it: what is new is what came after that. */
export const deskVisitTable = sqliteTable("desk_visit", {
  userId: text("user_id").primaryKey(),
  at: integer("at").notNull(),
  before: integer("before").notNull(),
});

/** Logs of classes that somebody has looked at. */
export const classLogSeenTable = sqliteTable(
  "class_log_seen",
  { sessionId: text("session_id").notNull(), userId: text("user_id").notNull(), at: integer("at").notNull() },
  (t) => [primaryKey({ columns: [t.sessionId, t.userId] })],
);

/** A colleague who is named in a comment. */
export const mentionTable = sqliteTable(
  "mention",
  {
    commentId: text("comment_id").notNull(),
    userId: text("user_id").notNull(),
    threadId: text("thread_id").notNull(),
    /** When they had the comment in front of them; null before. */
    seenAt: integer("seen_at"),
  },
  (t) => [primaryKey({ columns: [t.commentId, t.userId] }), index("mention_user").on(t.userId, t.seenAt)],
);

/** The studio's stock remarks, inserted by typing. Taken out of use, never deleted. */
export const remarkTable = sqliteTable("remark", {
  id: text("id").primaryKey(),
  words: text("words").notNull(),
  /** The rule or the move that it belongs to; null when it fits anywhere. */
  ruleId: text("rule_id"),
  moveId: text("move_id"),
  createdBy: text("created_by").notNull(),
  updatedAt: integer("updated_at").notNull(),
  archivedAt: integer("archived_at"),
});

/** A lead's change of one item or of a block's order, to be taken whole, in part, or declined. */
export const proposalTable = sqliteTable(
  "proposal",
  {
    id: text("id").primaryKey(),
    planId: text("plan_id").notNull(),
    /** The item, or the heading whose block is put in another order; null for the items before the first heading. */
    itemId: text("item_id"),
    byId: text("by_id").notNull(),
    at: integer("at").notNull(),
    /** Why, in the proposer's words. */
    note: text("note"),
    /** Its parts, each with what it was based on and what it would become (lib/proposal). */
    partsJson: text("parts_json").notNull(),
    state: text("state", { enum: ["open", "taken", "declined", "withdrawn"] })
      .notNull()
      .default("open"),
    /** Ids of the parts that were taken, JSON; null before. */
    takenJson: text("taken_json"),
    endedBy: text("ended_by"),
    endedAt: integer("ended_at"),
    /** Said when it was declined. */
    word: text("word"),
  },
  (t) => [index("proposal_plan").on(t.planId)],
);

/** A *look again* that a lead accepted with a reason. It holds while the finding keeps its values. */
export const acceptanceTable = sqliteTable(
  "acceptance",
  {
    id: text("id").primaryKey(),
    planId: text("plan_id").notNull(),
    ruleId: text("rule_id").notNull(),
    /** Identifies the finding with its items and its values. */
    findingKey: text("finding_key").notNull(),
    /** The sentence that was accepted. */
    message: text("message").notNull(),
    reason: text("reason").notNull(),
    byId: text("by_id").notNull(),
    at: integer("at").notNull(),
    endedBy: text("ended_by"),
    endedAt: integer("ended_at"),
  },
  (t) => [index("acceptance_plan").on(t.planId)],
);

/** Marks by the studio's rubric, of a round or of a class that was taught. Newer ones replace older of the same. Append-only. */
export const marksTable = sqliteTable(
  "marks",
  {
    id: text("id").primaryKey(),
    /** Whom they are about. */
    userId: text("user_id").notNull(),
    planId: text("plan_id").notNull(),
    round: integer("round"),
    sessionId: text("session_id"),
    byId: text("by_id").notNull(),
    at: integer("at").notNull(),
    /** The rubric as it was, so that old marks keep their meaning. */
    rubricJson: text("rubric_json").notNull(),
    /** Level by criterion. */
    levelsJson: text("levels_json").notNull(),
    sentence: text("sentence").notNull(),
  },
  (t) => [index("marks_user").on(t.userId), index("marks_plan").on(t.planId)],
);

/** What somebody is told in the app and, if they wish, by e-mail. */
export const noticeTable = sqliteTable(
  "notice",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    userId: text("user_id").notNull(),
    at: integer("at").notNull(),
    kind: text("kind").notNull(),
    planId: text("plan_id"),
    /** What the sentence is made of (lib/notices), JSON. */
    dataJson: text("data_json").notNull(),
    seenAt: integer("seen_at"),
    /** When it was put into a mail. */
    mailedAt: integer("mailed_at"),
  },
  (t) => [index("notice_user").on(t.userId, t.id)],
);

/** How somebody wants to be told. */
export const noticeChoiceTable = sqliteTable("notice_choice", {
  userId: text("user_id").primaryKey(),
  /** Local time of the daily digest, "07:30"; null for none. */
  digestAt: text("digest_at"),
  timeZone: text("time_zone").notNull().default("UTC"),
  /** By kind: "digest", "at-once" or "off"; what is missing has the kind's default. */
  kindsJson: text("kinds_json").notNull().default("{}"),
  /** Up to when digests have been dealt with: the last one, or when the choice was made. */
  digestSentAt: integer("digest_sent_at"),
});

/** How somebody wants dates and units written. Who has chosen nothing has no row. */
export const formatChoiceTable = sqliteTable("format_choice", {
  userId: text("user_id").primaryKey(),
  choicesJson: text("choices_json").notNull(), // lib OwnFormats, without what is as the studio has it
});

/** A mail that waits to be sent, or that could not be. */
export const mailTable = sqliteTable(
  "mail",
  {
    id: text("id").primaryKey(),
    userId: text("user_id").notNull(),
    /** Notices that it tells of, JSON. */
    noticesJson: text("notices_json").notNull(),
    madeAt: integer("made_at").notNull(),
    attempts: integer("attempts").notNull().default(0),
    nextAt: integer("next_at").notNull(),
    sentAt: integer("sent_at"),
    /** What the mail server said last. */
    problem: text("problem"),
    /** Since when it is not tried any more. */
    failedAt: integer("failed_at"),
  },
  (t) => [index("mail_waiting").on(t.sentAt, t.nextAt)],
);

/** Studio settings that one subject alone reads, by name: the rubric, the mail server. Secrets in them are sealed. */
export const studioSettingTable = sqliteTable("studio_setting", {
  name: text("name").primaryKey(),
  dataJson: text("data_json").notNull(),
  updatedAt: integer("updated_at").notNull(),
});

/**
 * The record of everything that counts, as a chain: each row holds the hash of the one before and its own. Append-only.
 * `seq` begins at 1 and has no gaps.
 */
export const recordTable = sqliteTable(
  "record",
  {
    seq: integer("seq").primaryKey(),
    at: integer("at").notNull(),
    actorId: text("actor_id").notNull(),
    /** "plan/<id>", "move/<id>", "room/<id>", "rule/<id>", "person/<id>", "studio". */
    subject: text("subject").notNull(),
    kind: text("kind").notNull(),
    /** Canonical JSON, RFC 8785. */
    bodyJson: text("body_json").notNull(),
    /** SHA-256 hex of the row before; of the first row, 64 zeros. */
    previousHash: text("previous_hash").notNull(),
    /** SHA-256 hex of the canonical row without this column. */
    hash: text("hash").notNull(),
  },
  (t) => [index("record_subject").on(t.subject, t.seq), uniqueIndex("record_hash").on(t.hash)],
);
