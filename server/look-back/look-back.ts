/** A month looked back on: what was taught of what was planned, for leads and managers; a coach reads others' classes only as sums. */
import { listClassesBetween } from "#db/repos/class-log-repo.ts";
import { listMembers, namesById } from "#db/repos/people-repo.ts";
import { titlesById } from "#db/repos/progress-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { secondsOver, type TaughtEnd } from "#lib/look-back/taught.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { LedClasses, spanOfMonth } from "#server/class-log/led-classes.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioClock } from "#server/month-facts/month-settings.ts";
import { monthIsNear } from "#server/programme/month-range.ts";
import { monthStateOf } from "#server/programme/read-month-file.ts";
import { EditionsTaught } from "./editions-taught.ts";
import { type LateEdition, lateEditions } from "./late-editions.ts";
import type { MonthLog } from "./month-log.ts";
import { type LookBackSums, lookBackSums } from "./sums-of-month.ts";

/** One log in detail. */
interface LogDetail {
  readonly key: string;
  readonly planId: string;
  readonly edition: number;
  readonly title: string;
  readonly roomName: string;
  /** `2026-05-04T18:02` on the studio's wall clock. */
  readonly at: string;
  readonly end: TaughtEnd;
  /** Whole minutes after its class was to begin (before: negative); null for a log of no class of the programme. */
  readonly minutesLate: number | null;
  /** Whole minutes more than planned, of what it came to. */
  readonly minutesOver: number;
  readonly coachId: string | null;
  readonly coachName: string | null;
  /** Somebody said who led it. */
  readonly named: boolean;
  readonly struck: { readonly byName: string; readonly at: number; readonly reason: string } | null;
}

export interface LookBack {
  readonly month: string;
  readonly sums: LookBackSums;
  readonly late: readonly LateEdition[];
  /** By time: all for leads and managers, a coach's own and those of whom nobody knows who led them for a coach. */
  readonly logs: readonly LogDetail[];
  /** May strike logs and say who led a class. */
  readonly remarks: boolean;
  readonly people: readonly { readonly id: string; readonly name: string }[];
}

/** Errors: 401, 403, 404 for a month out of range; 409, 503 when its document cannot be read. */
export function readLookBack(app: Springline, actor: Actor, month: string): Result<LookBack> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person" || !can(actor, "look-back.read")) return NO_RIGHT;
  if (!monthIsNear(month, app.now())) return NOT_FOUND;
  const state = monthStateOf(app, month);
  if (!state.ok && state.error.code !== "document-unknownDocument") return state;
  const led = new LedClasses(app);
  const editions = new EditionsTaught(app);
  const logs = logsOf(app, led, editions, month);
  const all = can(actor, "log.remark");
  const lists = state.ok ? state.value : { themes: {}, regulars: {} };
  const seen = all ? logs : logs.filter(({ coachId }) => coachId === actor.id || coachId === null);
  return ok({
    month,
    sums: lookBackSums(app, { planned: led.inMonth(month), logs, editions, lists, only: all ? null : actor.id }),
    late: lateEditions(app, logs, editions),
    logs: detailsOf(app, seen),
    remarks: all,
    people: all ? leadersOf(app) : leadersOf(app).filter(({ id }) => id === actor.id),
  });
}

/** The logs of the month's classes, and those of no class that began in the month. */
function logsOf(app: Springline, led: LedClasses, editions: EditionsTaught, month: string): MonthLog[] {
  const { from, to } = spanOfMonth(month);
  return listClassesBetween(app.db, from, to).flatMap(({ key, log, roomId, receivedAt }) => {
    // A device's clock may be wrong: a class cannot have begun after its log was received.
    const startedAt = Math.min(Date.parse(log.startedAt), receivedAt);
    const found = led.of({ key, roomId, planId: log.edition.planId, startedAt });
    const date = found.planned?.date ?? studioClock(app, startedAt);
    if (!date.startsWith(month)) return [];
    return [{ key, log, roomId, startedAt, end: editions.endOf(log), ...found }];
  });
}

const MINUTE_MS = 60_000;

function detailsOf(app: Springline, logs: readonly MonthLog[]): LogDetail[] {
  const [names, titles] = [namesById(app.db), titlesById(app.db)];
  const rooms = new Map(listStudioRooms(app.db).map(({ id, name }) => [id, name]));
  return logs.map(({ key, log, roomId, startedAt, end, planned, coachId, named, struck }) => ({
    key,
    planId: log.edition.planId,
    edition: log.edition.number,
    title: titles.get(log.edition.planId) ?? "",
    roomName: rooms.get(roomId) ?? "",
    at: studioClock(app, startedAt),
    end,
    minutesLate: planned ? Math.round((startedAt - planned.from) / MINUTE_MS) : null,
    minutesOver: Math.round(secondsOver(log) / 60),
    coachId,
    coachName: coachId === null ? null : (names.get(coachId) ?? null),
    named: named !== null,
    struck: struck && { byName: names.get(struck.actorId) ?? "", at: struck.at, reason: struck.reason ?? "" },
  }));
}

const LEAD_CLASSES: ReadonlySet<string> = new Set(["trainee", "coach", "lead"]);
const leadersOf = ({ db }: Springline) =>
  listMembers(db)
    .filter(({ roles }) => roles.some((role) => LEAD_CLASSES.has(role)))
    .map(({ id, name }) => ({ id, name }));
