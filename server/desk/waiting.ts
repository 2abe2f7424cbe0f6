/** What waits for somebody: plans to read, plans that came back, threads that name them, proposals, classes, logs. */
import { openProposals, unseenLogs, unseenMentions, visitDesk } from "#db/repos/desk-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { listPlanRows, type PlanRow } from "#db/repos/plan-repo.ts";
import { newestWithdrawals, type WithdrawalRow } from "#db/repos/withdrawal-repo.ts";
import { byUrgency, type Waiting } from "#lib/desk/waiting.ts";
import { type Actor, canPlan, type Person } from "#lib/policy/can.ts";
import type { PlanState } from "#lib/protocol/messages.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioClock, studioDay } from "#server/month-facts/month-settings.ts";
import { shownRound } from "#server/news/shown-round.ts";
import { changedClassesOf } from "./changed-classes.ts";
import { type ComingClass, comingClasses, comingMonths, standsSigned } from "./coming-classes.ts";

const DAY_MS = 86_400_000;
/** Our own choice: a log older than a month teaches little. */
const LOGS_SINCE_MS = 31 * DAY_MS;
/** Our own choice: how far ahead a class without a signed plan is said, and one that is not as it was signed. */
const CLASSES_AHEAD_DAYS = 14;

export interface WaitingAtDesk {
  /** The most urgent first. */
  readonly waiting: readonly Waiting[];
  /** When this person was here before, ms since the epoch; 0 for the first time. What is later is new. */
  readonly before: number;
}

interface Asking {
  readonly app: Springline;
  readonly person: Person;
  readonly rows: ReadonlyMap<string, PlanRow>;
  readonly nameOf: (id: string) => string;
  readonly classes: readonly ComingClass[];
}

/** Errors: 401, 403 for devices. */
export function readWaiting(app: Springline, actor: Actor): Result<WaitingAtDesk> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person") return NO_RIGHT;
  const names = namesById(app.db);
  const rows = listPlanRows(app.db).filter(
    (row) => row.deletedAt === null && row.archivedAt === null && canPlan(actor, "plan.read", row),
  );
  const asking: Asking = {
    app,
    person: actor,
    rows: new Map(rows.map((row) => [row.id, row])),
    nameOf: (id) => names.get(id) ?? FORMER_MEMBER,
    classes: comingClasses(app),
  };
  const before = visitDesk(app.db, actor.id, app.now());
  const waiting = [
    ...offered(asking),
    ...returned(asking),
    ...named(asking),
    ...proposed(asking),
    ...unsigned(asking),
    ...changed(asking),
    ...logs(asking),
  ];
  return ok({ waiting: waiting.sort(byUrgency), before });
}

/** The next class that a plan is for, as "2026-12-01 07:00". */
const classOf = ({ classes }: Asking, planId: string): string | null =>
  classes.find((coming) => coming.planId === planId)?.at ?? null;

/** For leads: everything that somebody else offered. */
function offered(asking: Asking): Waiting[] {
  const { app, person, rows, nameOf } = asking;
  if (!person.roles.includes("lead")) return [];
  return [...rows.values()].flatMap((row): Waiting[] => {
    if (row.state !== "handed-in" || row.handedInBy === null || row.handedInBy === person.id) return [];
    const { number = 1, readerId = null, readSince } = shownRound(app, row) ?? {};
    const reader = readerId === null ? null : { id: readerId, name: nameOf(readerId), since: readSince ?? 0 };
    return [
      {
        ...about(asking, row),
        kind: "offered",
        at: row.handedInAt ?? row.updatedAt,
        byName: nameOf(row.handedInBy),
        round: number,
        note: row.stateNote,
        reader,
      },
    ];
  });
}

const about = (asking: Asking, row: PlanRow) => ({
  planId: row.id,
  title: row.title,
  classAt: classOf(asking, row.id),
});

const isMine = ({ person }: Asking, row: PlanRow): boolean =>
  row.ownerId === person.id || row.sharedWith.includes(person.id) || row.handedInBy === person.id;

function returned(asking: Asking): Waiting[] {
  const own = [...asking.rows.values()].filter((row) => row.state === "handed-back" && isMine(asking, row));
  const withdrawals = own.length > 0 ? newestWithdrawals(asking.app.db) : new Map<string, WithdrawalRow>();
  return own.map((row): Waiting => {
    const round = shownRound(asking.app, row);
    // An edition that was withdrawn came back by its reason, not by a return of its round.
    const last = round?.outcome === "returned" ? round : undefined;
    const withdrawal = last ? undefined : withdrawals.get(row.id);
    const by = last?.endedBy ?? withdrawal?.withdrawnBy;
    return {
      ...about(asking, row),
      kind: "returned",
      withdrawn: withdrawal?.number ?? null,
      at: last?.endedAt ?? withdrawal?.withdrawnAt ?? row.updatedAt,
      byName: by ? asking.nameOf(by) : null,
      note: row.stateNote,
      mainPoints: last?.mainPoints ?? [],
    };
  });
}

function named(asking: Asking): Waiting[] {
  const { app, person, rows, nameOf } = asking;
  return unseenMentions(app.db, person.id).flatMap(({ planId, threadId, byId, at, body }): Waiting[] => {
    const row = rows.get(planId);
    return row ? [{ ...about(asking, row), kind: "named", at, threadId, byName: nameOf(byId), words: body }] : [];
  });
}

function proposed(asking: Asking): Waiting[] {
  const { app, person, rows, nameOf } = asking;
  const own = [...rows.values()].filter((row) => canPlan(person, "plan.write", row) && isMine(asking, row));
  return openProposals(
    app.db,
    own.map(({ id }) => id),
  ).flatMap(({ id, planId, byId, at }): Waiting[] => {
    const row = rows.get(planId);
    if (!row || byId === person.id) return [];
    return [{ ...about(asking, row), kind: "proposed", at, proposalId: id, byName: nameOf(byId) }];
  });
}

/** 'YYYY-MM-DD' */
const aheadUntil = (app: Springline): string => studioClock(app, app.now() + CLASSES_AHEAD_DAYS * DAY_MS).slice(0, 10);

/** Classes of mine that are not as the month was signed. */
function changed({ app, person }: Asking): Waiting[] {
  const days = { from: studioDay(app), to: aheadUntil(app) };
  return comingMonths(app).flatMap((month) =>
    changedClassesOf(app, person, month, days).map(({ at, changedAt, ...one }): Waiting => {
      return { ...one, kind: "changed", planId: null, classAt: at, at: changedAt };
    }),
  );
}

/** Classes of mine in the programme that have no signed plan. */
function unsigned({ app, person, rows, classes }: Asking): Waiting[] {
  const [now, until] = [studioClock(app, app.now()), aheadUntil(app)];
  return classes.flatMap((coming): Waiting[] => {
    // One that has begun is past help.
    if (coming.coachId !== person.id || coming.at.slice(0, 10) > until || coming.at < now) return [];
    if (coming.planId !== null && standsSigned(app, coming.planId)) return [];
    const row = coming.planId === null ? undefined : rows.get(coming.planId);
    if (coming.planId !== null && !row) return [];
    const state: PlanState | null = row?.state ?? null;
    return [
      {
        kind: "unsigned",
        planId: row?.id ?? null,
        title: row?.title ?? coming.theme,
        classAt: coming.at,
        at: 0,
        month: coming.at.slice(0, 7),
        state,
      },
    ];
  });
}

function logs(asking: Asking): Waiting[] {
  const { app, person, rows } = asking;
  const own = [...rows.values()].filter((row) => row.ownerId === person.id || person.roles.includes("lead"));
  const ids = own.map(({ id }) => id);
  return unseenLogs(app.db, person.id, ids, app.now() - LOGS_SINCE_MS).flatMap((log): Waiting[] => {
    const row = rows.get(log.planId);
    if (!row) return [];
    const { receivedAt: at, sessionId, edition } = log;
    return [{ kind: "log", planId: row.id, title: row.title, classAt: null, at, sessionId, edition }];
  });
}
