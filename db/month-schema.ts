/** Tables of the month: what was signed off, accepted findings, calendar feeds, remarks on class logs. Times are ms, UTC. */
import { index, integer, primaryKey, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";

/** What a lead had read of a month when they opened its sign-off, to be compared with what they sign. */
export const monthReadingTable = sqliteTable(
  "month_reading",
  {
    month: text("month").notNull(),
    userId: text("user_id").notNull(),
    hash: text("hash").notNull(),
    fileJson: text("file_json").notNull(),
    at: integer("at").notNull(),
  },
  (t) => [primaryKey({ columns: [t.month, t.userId, t.hash] })],
);

/** A month as it was signed off. Written once. */
export const monthEditionTable = sqliteTable(
  "month_edition",
  {
    month: text("month").notNull(),
    /** 1, 2, ... in a month. */
    number: integer("number").notNull(),
    hash: text("hash").notNull(), // SHA-256 hex of the canonical month file
    fileJson: text("file_json").notNull(), // canonical JSON, RFC 8785
    findingsJson: text("findings_json").notNull(),
    acceptedJson: text("accepted_json").notNull(),
    signedBy: text("signed_by").notNull(),
    signedAt: integer("signed_at").notNull(),
    note: text("note"),
  },
  (t) => [primaryKey({ columns: [t.month, t.number] })],
);

/** A *look again* of a month that a lead accepted with a reason. Only its undoing is added later. */
export const monthAcceptanceTable = sqliteTable(
  "month_acceptance",
  {
    id: text("id").primaryKey(),
    month: text("month").notNull(),
    rule: text("rule").notNull(),
    findingId: text("finding_id").notNull(),
    /** Identifies the finding with its values: when they change it stands again. */
    findingKey: text("finding_key").notNull(),
    message: text("message").notNull(),
    reason: text("reason").notNull(),
    acceptedBy: text("accepted_by").notNull(),
    acceptedAt: integer("accepted_at").notNull(),
    undoneBy: text("undone_by"),
    undoneAt: integer("undone_at"),
  },
  (t) => [index("month_acceptance_month").on(t.month)],
);

/** A secret address at which a calendar is read. The address itself is shown once; only its hash is kept. */
export const calendarFeedTable = sqliteTable(
  "calendar_feed",
  {
    id: text("id").primaryKey(),
    kind: text("kind", { enum: ["studio", "coach", "room"] }).notNull(),
    /** Id of the coach or the room; "" for the studio's. */
    subject: text("subject").notNull(),
    secretHash: text("secret_hash").notNull(),
    madeBy: text("made_by").notNull(),
    madeAt: integer("made_at").notNull(),
    withdrawnBy: text("withdrawn_by"),
    withdrawnAt: integer("withdrawn_at"),
    lastReadAt: integer("last_read_at"),
  },
  (t) => [uniqueIndex("calendar_feed_secret").on(t.secretHash)],
);

/** What people add to a class log, which is itself written once: who led the class, and that it is not to be counted. Append-only. */
export const classLogRemarkTable = sqliteTable(
  "class_log_remark",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    sessionId: text("session_id").notNull(),
    kind: text("kind", { enum: ["coach", "struck", "counted"] }).notNull(),
    /** Set for `coach`. */
    coachId: text("coach_id"),
    /** Set for `struck`. */
    reason: text("reason"),
    actorId: text("actor_id").notNull(),
    at: integer("at").notNull(),
  },
  (t) => [index("class_log_remark_session").on(t.sessionId)],
);
