/** Tables of the workspace. Times are ms since the epoch, UTC. JSON columns hold what `lib/` types describe. */
import { blob, index, integer, primaryKey, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** The one studio this installation serves. */
export const studioTable = sqliteTable("studio", {
  id: integer("id").primaryKey(), // always 1
  name: text("name").notNull(),
  town: text("town").notNull().default(""),
  /** Studio standards that differ from the rules' own (lib Standards). */
  standardsJson: text("standards_json").notNull().default("{}"),
  /** Studio policy: whether people may sign off a plan that only they wrote. */
  soleAuthorMaySign: integer("sole_author_may_sign", { mode: "boolean" }).notNull().default(false),
  createdAt: integer("created_at").notNull(),
});

/** Ed25519 keys of the studio; the private part is encrypted with the server's secret. */
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
  /** Scale readings by spring id (lib/springs RoomReadings), to be looked at again. Never part of a plan. */
  readingsJson: text("readings_json"),
});

/** The studio's record: who changed standards, machines and access. Append-only. */
export const studioEventTable = sqliteTable(
  "studio_event",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    at: integer("at").notNull(),
    actorId: text("actor_id").notNull(),
    kind: text("kind").notNull(),
    /** Id of the rule, the room or the person. */
    subject: text("subject").notNull(),
    dataJson: text("data_json").notNull(), // the new value
  },
  (t) => [index("studio_event_subject").on(t.kind, t.subject)],
);

/** The studio's library of moves (lib Move). A move is archived, never deleted: plans may still use it. */
export const moveTable = sqliteTable("move", {
  id: text("id").primaryKey(),
  dataJson: text("data_json").notNull(),
  /** Never the same twice in one library: it identifies the state that an editor started from. */
  updatedAt: integer("updated_at").notNull(),
  /** Since when it is not offered for new items; null while it is offered. */
  archivedAt: integer("archived_at"),
});

/** The record of the library: moves added, changed, archived and restored. Append-only. */
export const moveEventTable = sqliteTable(
  "move_event",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    moveId: text("move_id").notNull(),
    at: integer("at").notNull(),
    actorId: text("actor_id").notNull(),
    kind: text("kind").notNull(),
    /** The move after the event (lib Move), so that nothing is lost when somebody overwrites it. */
    dataJson: text("data_json").notNull(),
  },
  (t) => [index("move_event_move").on(t.moveId)],
);

export const planTable = sqliteTable(
  "plan",
  {
    id: text("id").primaryKey(),
    /** Title and length are copies for lists; the document decides. */
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
    /** Since when it is archived; null while it is on the desks. Its editions are not affected. */
    archivedAt: integer("archived_at"),
    /** The edition that it was made from, as "<plan id>/<number>". */
    origin: text("origin"),
  },
  (t) => [index("plan_owner").on(t.ownerId)],
);

export const planShareTable = sqliteTable(
  "plan_share",
  { planId: text("plan_id").notNull(), userId: text("user_id").notNull() },
  (t) => [primaryKey({ columns: [t.planId, t.userId] })],
);

/** Who has written in a plan, from the actors of the document log. */
export const planAuthorTable = sqliteTable(
  "plan_author",
  { planId: text("plan_id").notNull(), userId: text("user_id").notNull(), firstAt: integer("first_at").notNull() },
  (t) => [primaryKey({ columns: [t.planId, t.userId] })],
);

/** What a lead had read when they opened the sign-off, to be compared with what they sign. */
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
 * The result of a plan's last check, with everything it depends on: the state of the document, the studio data and the
 * program. Only a cache: without it the plan is checked again.
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
  /** The class in small (`lib/clock/class-strip.ts`), for lists. */
  strip: text("strip"),
});

/** A signed edition. Never changed after it is written. */
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
    /** Findings that were accepted with a reason, JSON; null in editions from before there were any. */
    acceptedJson: text("accepted_json"),
    /** The round that it came from; null in editions from before rounds were kept. */
    round: integer("round"),
  },
  (t) => [primaryKey({ columns: [t.planId, t.number] })],
);

/** The plan's record: offered for reading, returned with notes, signed off, shared, deleted. Append-only. */
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
    /** Whether its author was a lead when they wrote it. */
    asLead: integer("as_lead", { mode: "boolean" }).notNull().default(false),
  },
  (t) => [index("comment_thread").on(t.threadId)],
);

/** The header of a shared document. `generation` identifies its history: another one does not continue it. */
export const documentTable = sqliteTable("document", {
  name: text("name").primaryKey(), // lib/protocol DocName
  generation: text("generation").notNull(),
  createdAt: integer("created_at").notNull(),
});

/** The append-only log of shared documents: an update is stored here before anybody else sees it. */
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

/** Everything up to and including `seq`, in one update. The last few are kept. */
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
 * The person whose page a yjs client id is, in one document: recorded with or before the page's first change, and kept for
 * good. Changes under the id are accepted from that person alone, since they take the place of the page's own next ones.
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

/** A cue device. Only a hash of its token is stored. */
export const deviceTable = sqliteTable("device", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  roomId: text("room_id").notNull(),
  tokenHash: text("token_hash"),
  /** Hash of the pairing code until it is used. */
  codeHash: text("code_hash"),
  codeExpiresAt: integer("code_expires_at"),
  pairedAt: integer("paired_at"),
  lastSeenAt: integer("last_seen_at"),
  revokedAt: integer("revoked_at"),
  createdBy: text("created_by").notNull(),
});

/** The log of a class, as sent by its device. Written once: the same session again changes nothing. */
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

/** An edition that a lead withdrew, and the reason. Written once: the edition itself never changes. */
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
