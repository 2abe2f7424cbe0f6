/** Tables of the workspace. Times are ms since the epoch, UTC. JSON columns hold what `lib/` types describe. */
import { blob, index, integer, primaryKey, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** The one studio this installation serves. */
export const studioTable = sqliteTable("studio", {
  id: integer("id").primaryKey(), // always 1
  name: text("name").notNull(),
  town: text("town").notNull().default(""),
  /** House standards that differ from the rules' own (lib Standards). */
  standardsJson: text("standards_json").notNull().default("{}"),
  /** House policy: may somebody sign off a plan that only they wrote? */
  soleAuthorMaySign: integer("sole_author_may_sign", { mode: "boolean" }).notNull().default(false),
  createdAt: integer("created_at").notNull(),
});

/** Ed25519 keys of the studio; the private part is sealed with the server's secret. */
export const signingKeyTable = sqliteTable("signing_key", {
  id: text("id").primaryKey(),
  publicKey: text("public_key").notNull(), // base64url, 32 bytes
  sealedPrivateKey: text("sealed_private_key").notNull(),
  createdAt: integer("created_at").notNull(),
});

export const roomTable = sqliteTable("room", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  equipmentJson: text("equipment_json").notNull(), // lib Equipment
  /** What the scale showed, by spring id (lib/springs RoomReadings): to be looked at again. Never part of a plan. */
  readingsJson: text("readings_json"),
});

/** The house's record: standards and machines, who changed what. Only ever added to. */
export const studioEventTable = sqliteTable(
  "studio_event",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    at: integer("at").notNull(),
    actorId: text("actor_id").notNull(),
    kind: text("kind").notNull(),
    /** Id of the rule or the room. */
    subject: text("subject").notNull(),
    dataJson: text("data_json").notNull(), // what it was changed to
  },
  (t) => [index("studio_event_subject").on(t.kind, t.subject)],
);

/** The studio's library of moves (lib Move). A move is never deleted: plans go on using what is not offered any more. */
export const moveTable = sqliteTable("move", {
  id: text("id").primaryKey(),
  dataJson: text("data_json").notNull(),
  /** Never twice the same in one library: it names the state that an editor began from. */
  updatedAt: integer("updated_at").notNull(),
  /** Since when it is not offered for new items; null while it is. */
  archivedAt: integer("archived_at"),
});

/** The record of the library: added, changed, taken out, put back. Only ever added to. */
export const moveEventTable = sqliteTable(
  "move_event",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    moveId: text("move_id").notNull(),
    at: integer("at").notNull(),
    actorId: text("actor_id").notNull(),
    kind: text("kind").notNull(),
    /** What the move was after it (lib Move): nothing that anybody wrote is lost when somebody writes over it. */
    dataJson: text("data_json").notNull(),
  },
  (t) => [index("move_event_move").on(t.moveId)],
);

export const planTable = sqliteTable(
  "plan",
  {
    id: text("id").primaryKey(),
    /** Copies of the document's head for lists; the document is the truth. */
    title: text("title").notNull(),
    lengthSeconds: integer("length_seconds").notNull(),
    ownerId: text("owner_id").notNull(),
    roomId: text("room_id").notNull(),
    team: integer("team", { mode: "boolean" }).notNull().default(false),
    state: text("state", { enum: ["in-writing", "handed-in", "handed-back", "signed-off"] })
      .notNull()
      .default("in-writing"),
    handedInBy: text("handed_in_by"),
    handedInAt: integer("handed_in_at"),
    stateNote: text("state_note"),
    createdAt: integer("created_at").notNull(),
    updatedAt: integer("updated_at").notNull(),
    deletedAt: integer("deleted_at"),
    /** Since when its owner has it out of the way; null while it is on the desks. Its editions stay as they are. */
    archivedAt: integer("archived_at"),
  },
  (t) => [index("plan_owner").on(t.ownerId)],
);

export const planShareTable = sqliteTable(
  "plan_share",
  { planId: text("plan_id").notNull(), userId: text("user_id").notNull() },
  (t) => [primaryKey({ columns: [t.planId, t.userId] })],
);

/** Who has written in a plan: filled from the update log's actors. */
export const planAuthorTable = sqliteTable(
  "plan_author",
  { planId: text("plan_id").notNull(), userId: text("user_id").notNull(), firstAt: integer("first_at").notNull() },
  (t) => [primaryKey({ columns: [t.planId, t.userId] })],
);

/** What a signer had in front of them when they opened the sign-off: compared with what they then sign. */
export const planReadingTable = sqliteTable(
  "plan_reading",
  {
    planId: text("plan_id").notNull(),
    userId: text("user_id").notNull(),
    hash: text("hash").notNull(),
    planJson: text("plan_json").notNull(),
    at: integer("at").notNull(),
  },
  (t) => [primaryKey({ columns: [t.planId, t.userId, t.hash] })],
);

/**
 * What the last check of a plan answered, with all that it depends on: the state of the document, the studio, the program.
 * Only kept to be spared: without it the plan is checked again.
 */
export const planCheckTable = sqliteTable("plan_check", {
  planId: text("plan_id").primaryKey(),
  generation: text("generation").notNull(),
  /** The document's last row in the log. */
  seq: integer("seq").notNull(),
  studioMark: text("studio_mark").notNull(),
  programMark: text("program_mark").notNull(),
  planMark: text("plan_mark"),
  findingsMark: text("findings_mark"),
  must: integer("must").notNull(),
  look: integer("look").notNull(),
  info: integer("info").notNull(),
});

/** A signed edition: never changed after it is written. */
export const editionTable = sqliteTable(
  "edition",
  {
    planId: text("plan_id").notNull(),
    number: integer("number").notNull(),
    hash: text("hash").notNull(), // SHA-256 hex of the canonical plan
    planJson: text("plan_json").notNull(), // canonical JSON, RFC 8785
    cardJson: text("card_json").notNull(), // the signed envelope
    findingsJson: text("findings_json").notNull(),
    signedBy: text("signed_by").notNull(),
    signedAt: integer("signed_at").notNull(),
    note: text("note"),
  },
  (t) => [primaryKey({ columns: [t.planId, t.number] })],
);

/** The plan's record: handed in, handed back, signed off, shared, deleted. Only ever added to. */
export const planEventTable = sqliteTable(
  "plan_event",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    planId: text("plan_id").notNull(),
    at: integer("at").notNull(),
    actorId: text("actor_id").notNull(),
    kind: text("kind").notNull(),
    note: text("note"),
    hash: text("hash"),
  },
  (t) => [index("plan_event_plan").on(t.planId)],
);

export const threadTable = sqliteTable(
  "thread",
  {
    id: text("id").primaryKey(),
    planId: text("plan_id").notNull(),
    anchorJson: text("anchor_json").notNull(), // lib/protocol Anchor
    settled: integer("settled", { mode: "boolean" }).notNull().default(false),
    createdAt: integer("created_at").notNull(),
  },
  (t) => [index("thread_plan").on(t.planId)],
);

export const commentTable = sqliteTable(
  "comment",
  {
    id: text("id").primaryKey(),
    threadId: text("thread_id").notNull(),
    authorId: text("author_id").notNull(),
    body: text("body").notNull(),
    at: integer("at").notNull(),
  },
  (t) => [index("comment_thread").on(t.threadId)],
);

/** A shared document's header. `generation` changes when the history does not continue the old one. */
export const documentTable = sqliteTable("document", {
  name: text("name").primaryKey(), // lib/protocol DocName
  generation: text("generation").notNull(),
  createdAt: integer("created_at").notNull(),
});

/** The append-only log: an update stands here before anybody else sees it. */
export const docUpdateTable = sqliteTable(
  "doc_update",
  {
    seq: integer("seq").primaryKey({ autoIncrement: true }),
    name: text("name").notNull(),
    bytes: blob("bytes", { mode: "buffer" }).notNull(),
    actorId: text("actor_id").notNull(),
    at: integer("at").notNull(),
  },
  (t) => [index("doc_update_name").on(t.name, t.seq)],
);

/** Everything up to and including `seq` in one update. The last few are kept. */
export const docSnapshotTable = sqliteTable(
  "doc_snapshot",
  {
    name: text("name").notNull(),
    seq: integer("seq").notNull(),
    bytes: blob("bytes", { mode: "buffer" }).notNull(),
    at: integer("at").notNull(),
  },
  (t) => [primaryKey({ columns: [t.name, t.seq] })],
);

/**
 * Whose page a yjs client id is, in one document: noted before the page's first word or with it, and kept for good. Words
 * under it are taken from that person alone; they would stand where the page's own next words belong.
 */
export const docClientTable = sqliteTable(
  "doc_client",
  {
    name: text("name").notNull(),
    clientId: integer("client_id").notNull(),
    userId: text("user_id").notNull(),
    at: integer("at").notNull(),
  },
  (t) => [primaryKey({ columns: [t.name, t.clientId] })],
);

/** A paired cue device. Only a hash of its token is kept. */
export const deviceTable = sqliteTable("device", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  roomId: text("room_id").notNull(),
  tokenHash: text("token_hash"),
  /** Hash of the pairing code, while it waits to be used once. */
  codeHash: text("code_hash"),
  codeExpiresAt: integer("code_expires_at"),
  pairedAt: integer("paired_at"),
  lastSeenAt: integer("last_seen_at"),
  revokedAt: integer("revoked_at"),
  createdBy: text("created_by").notNull(),
});

/** What a class did, as its device told it. Written once: the same session again changes nothing. */
export const classLogTable = sqliteTable(
  "class_log",
  {
    sessionId: text("session_id").primaryKey(),
    planId: text("plan_id").notNull(),
    number: integer("number").notNull(),
    roomId: text("room_id").notNull(),
    deviceId: text("device_id").notNull(),
    kind: text("kind").notNull(),
    /** By the device's clock. */
    startedAt: integer("started_at").notNull(),
    receivedAt: integer("received_at").notNull(),
    logJson: text("log_json").notNull(), // lib/floor ClassLog, canonical
  },
  (t) => [index("class_log_edition").on(t.planId, t.number)],
);

/** An edition that a lead took out of use, and why. Written once: the edition itself never changes. */
export const editionWithdrawalTable = sqliteTable(
  "edition_withdrawal",
  {
    planId: text("plan_id").notNull(),
    number: integer("number").notNull(),
    withdrawnBy: text("withdrawn_by").notNull(),
    withdrawnAt: integer("withdrawn_at").notNull(),
    reason: text("reason").notNull(),
  },
  (t) => [primaryKey({ columns: [t.planId, t.number] })],
);
