/** The plans that somebody may read. For a lead, handed-in plans come first, the longest waiting on top. */
import { setTimeout as sleep } from "node:timers/promises";
import { readCheck } from "#db/repos/check-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { listPlanRows, type PlanRow } from "#db/repos/plan-repo.ts";
import { countThreads } from "#db/repos/thread-repo.ts";
import { type Actor, canPlan, type Person } from "#lib/policy/can.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { summariesOf } from "#server/news/plan-summaries.ts";
import { planStudio } from "#server/studio-data/plan-studio.ts";

export interface PlanListEntry extends PlanSummary {
  readonly ownerId: string;
  readonly roomId: string;
  readonly team: boolean;
  readonly sharedWith: readonly string[];
  /** ms since the epoch. */
  readonly updatedAt: number;
  readonly openThreads: number;
  readonly writes: boolean;
  /** The class in small as it was last checked; null before the first check. */
  readonly strip: string | null;
  /** While it is offered for reading. */
  readonly handedIn?: {
    readonly byId: string;
    readonly byName: string;
    readonly at: number;
    readonly note: string | null;
    /** How many findings must be fixed before it can be signed; null when it is not checked yet or cannot be read. */
    readonly mustFix: number | null;
  };
}

export interface ArchivedPlan extends PlanSummary {
  readonly archivedAt: number;
  /** Whether the asker may put it back. */
  readonly mayReturn: boolean;
}

export interface DeletedPlan extends PlanSummary {
  readonly deletedAt: number;
}

/** Errors: 401, 403 for devices. Empty for somebody who may read no plan. */
export async function listPlans(app: Springline, actor: Actor): Promise<Result<{ plans: PlanListEntry[] }>> {
  const person = personOf(actor);
  if (!person.ok) return person;
  const onDesk = () => listPlanRows(app.db).filter((row) => isOnDesks(row) && canPlan(person.value, "plan.read", row));
  await checkedSoon(app, onDesk());
  drawnSoon(app, onDesk());
  const rows = onDesk();
  const summary = summariesOf(app);
  const mustFix = mustFixOf(app);
  const plans = rows.map((row) => entryOf({ app, person: person.value, mustFix }, row, summary(row)));
  return ok({ plans: person.value.roles.includes("lead") ? deskOrder(plans) : plans });
}

const isOnDesks = (row: PlanRow): boolean => row.deletedAt === null && row.archivedAt === null;

/** Archived plans that the asker may read, the last archived first. Errors: 401, 403 for devices. */
export function listArchivedPlans(app: Springline, actor: Actor): Result<{ plans: ArchivedPlan[] }> {
  const person = personOf(actor);
  if (!person.ok) return person;
  const summary = summariesOf(app);
  const plans = listPlanRows(app.db).flatMap((row): ArchivedPlan[] => {
    const { archivedAt } = row;
    if (archivedAt === null || row.deletedAt !== null || !canPlan(person.value, "plan.read", row)) return [];
    return [{ ...summary(row), archivedAt, mayReturn: canPlan(person.value, "plan.delete", row) }];
  });
  return ok({ plans: plans.sort((a, b) => b.archivedAt - a.archivedAt) });
}

/** Deleted plans that the asker may restore, the last deleted first. Errors: 401, 403 for devices. */
export function listDeletedPlans(app: Springline, actor: Actor): Result<{ plans: DeletedPlan[] }> {
  const person = personOf(actor);
  if (!person.ok) return person;
  const summary = summariesOf(app);
  const plans = listPlanRows(app.db).flatMap((row): DeletedPlan[] => {
    if (row.deletedAt === null || !canPlan(person.value, "plan.delete", row)) return [];
    return [{ ...summary(row), deletedAt: row.deletedAt }];
  });
  return ok({ plans: plans.sort((a, b) => b.deletedAt - a.deletedAt) });
}

function personOf(actor: Actor): Result<Person> {
  if (actor === null) return NOT_SIGNED_IN;
  return actor.kind === "person" ? ok(actor) : NO_RIGHT;
}

interface Desk {
  readonly app: Springline;
  readonly person: Person;
  readonly mustFix: (row: PlanRow) => number | null;
}

function entryOf({ app, person, mustFix }: Desk, row: PlanRow, summary: PlanSummary): PlanListEntry {
  const entry = {
    ...summary,
    ownerId: row.ownerId,
    roomId: row.roomId,
    team: row.team,
    sharedWith: row.sharedWith,
    updatedAt: row.updatedAt,
    openThreads: countThreads(app.db, row.id).open,
    writes: canPlan(person, "plan.write", row),
    strip: readCheck(app.db, row.id)?.strip ?? null,
  };
  if (row.state !== "handed-in" || row.handedInBy === null) return entry;
  const byName = namesById(app.db).get(row.handedInBy) ?? FORMER_MEMBER;
  const handedIn = { byId: row.handedInBy, byName, at: row.handedInAt ?? row.updatedAt, note: row.stateNote };
  return { ...entry, handedIn: { ...handedIn, mustFix: mustFix(row) } };
}

/** How long a desk waits for checks that have still to run, ms: those of a new version of the program take longer. */
const DESK_WAIT_MS = 1500;

/** Waits a little for the checks that the list will ask for. */
async function checkedSoon(app: Springline, rows: readonly PlanRow[]): Promise<void> {
  const mustFix = mustFixOf(app);
  const waitedFor = rows.filter((row) => row.state === "handed-in" && mustFix(row) === null);
  if (waitedFor.length === 0) return;
  const late = new AbortController();
  const checked = Promise.all(waitedFor.map(({ id }) => app.checks.now(id)));
  await Promise.race([checked, sleep(DESK_WAIT_MS, undefined, { signal: late.signal })]);
  late.abort();
}

/** Plans that were never checked have no drawing: the next list has it. */
function drawnSoon(app: Springline, rows: readonly PlanRow[]): void {
  for (const { id } of rows) if ((readCheck(app.db, id)?.strip ?? null) === null) app.checks.soon(id);
}

/** From the last check, if it is current. */
function mustFixOf(app: Springline): Desk["mustFix"] {
  const marks = new Map<string, string>();
  return (row) => {
    const mark = marks.get(row.roomId) ?? planStudio(app.db, row.roomId).mark;
    marks.set(row.roomId, mark);
    return app.checks.kept(row, mark)?.must ?? null;
  };
}

/** Handed-in plans first, the longest waiting on top; the rest in the order of their last change, newest first. */
function deskOrder(plans: readonly PlanListEntry[]): PlanListEntry[] {
  const waiting = plans.filter((plan) => plan.handedIn);
  waiting.sort((a, b) => (a.handedIn?.at ?? 0) - (b.handedIn?.at ?? 0) || (a.id < b.id ? -1 : 1));
  return [...waiting, ...plans.filter((plan) => !plan.handedIn)];
}
