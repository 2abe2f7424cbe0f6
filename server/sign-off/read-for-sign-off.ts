/** Gives a plan to a lead to read before sign-off, and stores what they saw: only what was read can be signed. */

import { newestEdition } from "#db/repos/edition-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { putReading } from "#db/repos/reading-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { type FromFile, fromFile } from "#lib/doc/from-file.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import type { Actor, Person } from "#lib/policy/can.ts";
import type { ComparePoint } from "#lib/rounds/rounds.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { lookAgainLeft } from "#server/acceptances/accepted-of.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Assessment } from "#server/context/assessment.ts";
import type { Springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { assessNow, withPlan } from "#server/plans/plan-doc.ts";
import { readPoint, readRounds } from "#server/rounds/read-rounds.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { type Blocker, signBlockers } from "./sign-blockers.ts";

export interface SignOffReading {
  /** SHA-256 (hex) of the canonical plan, to be sent back when signing. */
  readonly hash: string;
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly blockers: readonly Blocker[];
  /** What came with a file and differs from the studio's own data; the findings are based on the file's. */
  readonly fromFile: readonly FromFile[];
  /** The *look again* findings that nobody has accepted: signing leaves them open. */
  readonly lookAgain: readonly Finding[];
  /**
   * What has changed since this person last read, returned or signed it, or a colleague returned it, in sentences; left out
   * when nothing has or nobody did. Opening the review again shows the same.
   */
  readonly changedSince?: readonly string[];
  /** Whose reading or return that was. */
  readonly since?: ComparePoint;
  /** The items as they were then, to mark what is different on each; left out as `changedSince` is. */
  readonly itemsRead?: readonly PlanItem[];
  /** The number the next edition will have. */
  readonly nextEdition: number;
}

/** Errors: 401, 403, 404; 409 or 503 when the document cannot be read. */
export async function readForSignOff(app: Springline, actor: Actor, id: string): Promise<Result<SignOffReading>> {
  const opened = openPlan(app, actor, id, "plan.sign");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const f = personFormats(app, person.id);
  const differing = withPlan(app, row, (_, doc) => ok(fromFile(doc, studioContext(app.db, row.roomId), f)));
  if (!differing.ok) return differing;
  const found = await assessNow(app, row);
  if (!found.ok) return found;
  // Rights and state may have changed while the rules were run.
  const still = openPlan(app, actor, id, "plan.sign");
  return still.ok ? ok(readingOf(app, still.value, found.value, differing.value)) : still;
}

function readingOf(
  app: Springline,
  { row, person }: { readonly row: PlanRow; readonly person: Person },
  found: Assessment,
  differing: readonly FromFile[],
): SignOffReading {
  const { plan, hash, findings } = found;
  const last = readBefore(app, person, row);
  const reading = { planId: row.id, userId: person.id, hash, plan, at: app.now() };
  inTransaction(app.db, () => putReading(app.db, reading, last?.readingHash));
  return {
    hash,
    plan,
    findings,
    blockers: signBlockers(app, row, person.id, found),
    fromFile: differing,
    lookAgain: lookAgainLeft(app, row.id, findings),
    nextEdition: (newestEdition(app.db, row.id)?.number ?? 0) + 1,
    ...(last ? changesSince(last, plan, personFormats(app, person.id)) : {}),
  };
}

interface ReadBefore {
  readonly point: ComparePoint;
  readonly plan: Plan;
  /** Of the stored reading, where it was one. */
  readonly readingHash: string | undefined;
}

/** What the review compares with: the point that the plan's page compares with for this person. */
function readBefore(app: Springline, person: Person, row: PlanRow): ReadBefore | null {
  const rounds = readRounds(app, person, row.id);
  const point = rounds.ok ? rounds.value.points.find(({ id }) => id === rounds.value.usual) : undefined;
  const text = point && readPoint(app, person, row.id, point.id);
  if (!point || !text?.ok || text.value.plan === null) return null;
  const plan = text.value.plan as Plan; // written by the server as it read it
  return { point, plan, readingHash: point.kind === "reading" ? contentHash(plan) : undefined };
}

function changesSince({ point, plan: before }: ReadBefore, plan: Plan, f: Formats): Partial<SignOffReading> {
  const changedSince = planChanges(before, plan, f);
  return changedSince.length === 0 ? {} : { changedSince, since: point, itemsRead: before.items };
}
