/** Who is a manager by the record: a row of `member` alone can be forged without breaking the chain. */
import type { Db } from "#db/connection.ts";
import { findRecord } from "#db/repos/record-repo.ts";

/** First run, joining by invitation, a change of roles; and what ends it. */
const KINDS = ["studio-made", "joined", "roles", "removed", "person-deleted"];
const ALL = { after: 0, before: Number.MAX_SAFE_INTEGER, limit: Number.MAX_SAFE_INTEGER };

/** Ids of people whom the last row about their roles leaves a manager. */
export function recordedManagers(db: Db): ReadonlySet<string> {
  const managers = new Set<string>();
  for (const { kind, actorId, subject, bodyJson } of findRecord(db, { kinds: KINDS }, ALL).reverse()) {
    const id = kind === "studio-made" ? actorId : subject.replace(/^person\//, "");
    const givesRoles = kind !== "removed" && kind !== "person-deleted";
    if (givesRoles && rolesIn(bodyJson).includes("manager")) managers.add(id);
    else managers.delete(id);
  }
  return managers;
}

function rolesIn(bodyJson: string): readonly unknown[] {
  const { roles } = (JSON.parse(bodyJson) ?? {}) as { readonly roles?: unknown };
  return Array.isArray(roles) ? roles : [];
}
