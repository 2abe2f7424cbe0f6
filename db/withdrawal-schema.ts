/** Editions taken out of use. Times in ms since the epoch, UTC. */
import { integer, primaryKey, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** An edition that a lead took out of use, and why. Written once: the edition itself never changes. */
export const editionWithdrawal = sqliteTable(
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
