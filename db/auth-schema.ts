/**
 * The account tables, with the columns that the sign-in library expects. One organization row represents the studio; a
 * member row holds a person's roles. Times are ms since the epoch, UTC.
 */
import { index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";

const time = (name: string) => integer(name, { mode: "timestamp_ms" });

/** A person who has or had an account. The row stays when they leave, so that their plans keep an author. */
export const userTable = sqliteTable("user", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  email: text("email").notNull().unique(),
  emailVerified: integer("email_verified", { mode: "boolean" }).notNull().default(false),
  image: text("image"),
  createdAt: time("created_at").notNull(),
  updatedAt: time("updated_at").notNull(),
});

export const sessionTable = sqliteTable(
  "session",
  {
    id: text("id").primaryKey(),
    expiresAt: time("expires_at").notNull(),
    token: text("token").notNull().unique(),
    createdAt: time("created_at").notNull(),
    updatedAt: time("updated_at").notNull(),
    ipAddress: text("ip_address"),
    userAgent: text("user_agent"),
    userId: text("user_id")
      .notNull()
      .references(() => userTable.id, { onDelete: "cascade" }),
    activeOrganizationId: text("active_organization_id"),
  },
  (t) => [index("session_user").on(t.userId)],
);

/** How a person signs in. Only the provider "credential" is used: a password hash. */
export const accountTable = sqliteTable(
  "account",
  {
    id: text("id").primaryKey(),
    accountId: text("account_id").notNull(),
    providerId: text("provider_id").notNull(),
    userId: text("user_id")
      .notNull()
      .references(() => userTable.id, { onDelete: "cascade" }),
    accessToken: text("access_token"),
    refreshToken: text("refresh_token"),
    idToken: text("id_token"),
    accessTokenExpiresAt: time("access_token_expires_at"),
    refreshTokenExpiresAt: time("refresh_token_expires_at"),
    scope: text("scope"),
    password: text("password"),
    createdAt: time("created_at").notNull(),
    updatedAt: time("updated_at").notNull(),
  },
  (t) => [index("account_user").on(t.userId)],
);

export const verificationTable = sqliteTable(
  "verification",
  {
    id: text("id").primaryKey(),
    identifier: text("identifier").notNull(),
    value: text("value").notNull(),
    expiresAt: time("expires_at").notNull(),
    createdAt: time("created_at").notNull(),
    updatedAt: time("updated_at").notNull(),
  },
  (t) => [index("verification_identifier").on(t.identifier)],
);

export const organizationTable = sqliteTable("organization", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  slug: text("slug").notNull().unique(),
  logo: text("logo"),
  createdAt: time("created_at").notNull(),
  metadata: text("metadata"),
});

export const memberTable = sqliteTable(
  "member",
  {
    id: text("id").primaryKey(),
    organizationId: text("organization_id")
      .notNull()
      .references(() => organizationTable.id, { onDelete: "cascade" }),
    userId: text("user_id")
      .notNull()
      .unique()
      .references(() => userTable.id, { onDelete: "cascade" }),
    /** Roles of lib/policy, separated by commas: "coach,manager". */
    role: text("role").notNull(),
    createdAt: time("created_at").notNull(),
  },
  (t) => [index("member_organization").on(t.organizationId)],
);

/** An invitation link. `id` is the unguessable part of the link; `email` is set by the person who invites. */
export const invitationTable = sqliteTable(
  "invitation",
  {
    id: text("id").primaryKey(),
    organizationId: text("organization_id")
      .notNull()
      .references(() => organizationTable.id, { onDelete: "cascade" }),
    email: text("email").notNull(),
    name: text("name"),
    role: text("role"),
    status: text("status", { enum: ["pending", "accepted", "revoked"] })
      .notNull()
      .default("pending"),
    expiresAt: time("expires_at").notNull(),
    createdAt: time("created_at").notNull(),
    inviterId: text("inviter_id")
      .notNull()
      .references(() => userTable.id, { onDelete: "cascade" }),
  },
  (t) => [index("invitation_email").on(t.email)],
);
