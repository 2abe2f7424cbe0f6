/** Rounds of a plan for people who may read it, and what the plan was at one point of them. */
import { type EditionHead, listEditions } from "#db/repos/edition-repo.ts";
import { listPlanEvents } from "#db/repos/event-repo.ts";
import { listMomentBriefs, type MomentBrief, readMomentRow, readPlanText } from "#db/repos/moment-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { readPlatesRead } from "#db/repos/plate-read-repo.ts";
import { readReading } from "#db/repos/reading-repo.ts";
import { listRounds, type RoundRow } from "#db/repos/round-repo.ts";
import { type Actor, canPlan, type Person } from "#lib/policy/can.ts";
import type { ComparePoint, EarlierStep, MomentHead, PointText, RoundsView, RoundView } from "#lib/rounds/rounds.ts";
import { usualPoint } from "#lib/rounds/usual-point.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { damagedEdition, readSoundEdition } from "#server/editions/sound-edition.ts";
import { shownRound } from "#server/news/shown-round.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { readingPoint } from "./reading-point.ts";
import { NO_SUCH_POINT } from "./refusals.ts";

type NameOf = (id: string) => string;

/** Errors: 401, 403, 404. */
export function readRounds(app: Springline, actor: Actor, id: string): Result<RoundsView> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const names = namesById(app.db);
  const nameOf: NameOf = (userId) => names.get(userId) ?? FORMER_MEMBER;
  const moments = listMomentBriefs(app.db, id);
  const rounds = roundsOf(app, row);
  const points = pointsOf(app, { row, person, rounds, moments }, nameOf);
  const heads = moments.map((moment) => headOf(moment, nameOf));
  const numbers = new Set(rounds.map(({ number }) => number));
  return ok({
    rounds: rounds.map((round) => viewOf(round, heads, nameOf)),
    earlier: earlierSteps(app, id, rounds[0]?.offeredAt ?? null, nameOf),
    besides: heads.filter(({ round }) => !numbers.has(round)),
    points,
    usual: usualPoint(points, {
      ...{ id: person.id, leads: canPlan(person, "plan.sign", row), state: row.state },
      offeredAt: openSince(rounds),
    }),
    platesRead: readPlatesRead(app.db, id, person.id),
  });
}

function roundsOf(app: Springline, row: PlanRow): RoundRow[] {
  const stored = listRounds(app.db, row.id);
  const shown = shownRound(app, row);
  return shown && shown.number > stored.length ? [...stored, shown] : stored;
}

/** When the open round was offered; null while none is. */
function openSince(rounds: readonly RoundRow[]): number | null {
  const last = rounds.at(-1);
  return last?.outcome === null ? last.offeredAt : null;
}

function viewOf(round: RoundRow, heads: readonly MomentHead[], nameOf: NameOf): RoundView {
  const { planId: _planId, offeredBy, readerId, endedBy, ...rest } = round;
  return {
    ...rest,
    readerId,
    offeredById: offeredBy,
    offeredByName: nameOf(offeredBy),
    readerName: readerId === null ? null : nameOf(readerId),
    endedByName: endedBy === null ? null : nameOf(endedBy),
    moments: heads.filter((head) => head.round === round.number),
  };
}

function headOf({ planId: _planId, actorId, hash, ...rest }: MomentBrief, nameOf: NameOf): MomentHead {
  return { ...rest, byId: actorId, byName: nameOf(actorId), hasText: hash !== "" };
}

const EARLIER = new Set<string>(["handed-in", "handed-back", "taken-back", "signed-off", "withdrawn"]);

/** Steps from before the first round, from the plan's own record. */
function earlierSteps(app: Springline, planId: string, until: number | null, nameOf: NameOf): EarlierStep[] {
  const before = (at: number) => until === null || at < until;
  const events = listPlanEvents(app.db, planId).filter(({ kind, at }) => EARLIER.has(kind) && before(at));
  return events.map(({ kind, at, actorId, note }) => ({
    kind: kind as EarlierStep["kind"], // as filtered
    ...{ at, note: note ?? null, byName: nameOf(actorId) },
  }));
}

interface Kept {
  readonly row: PlanRow;
  readonly person: Person;
  readonly rounds: readonly RoundRow[];
  readonly moments: readonly MomentBrief[];
}

function pointsOf(app: Springline, { row, person, rounds, moments }: Kept, nameOf: NameOf): ComparePoint[] {
  const editionOf = new Map(rounds.map(({ number, edition }) => [number, edition]));
  const kept = new Set(editionOf.values());
  const ofMoments = moments
    .filter(({ hash }) => hash !== "")
    .map(({ id, kind, at, actorId, round }) => ({
      ...{ id: String(id), kind, at, byId: actorId, round },
      edition: kind === "signed" || kind === "withdrawn" ? (editionOf.get(round) ?? null) : null,
    }));
  const ofEditions = listEditions(app.db, row.id)
    .filter(({ number }) => !kept.has(number))
    .map(editionPoint);
  const read = readingPoint(app, row.id, person.id, openSince(rounds));
  const round = rounds.at(-1)?.number ?? 0;
  const base = { id: "reading", kind: "reading" as const, byId: person.id, round, edition: null };
  const all: Omit<ComparePoint, "byName">[] = [
    ...ofMoments,
    ...ofEditions,
    ...(read ? [{ ...base, at: read.at }] : []),
  ];
  return all.map((point) => ({ ...point, byName: nameOf(point.byId) })).sort((a, b) => a.at - b.at);
}

const editionPoint = ({ number, signedAt, signedBy }: EditionHead): Omit<ComparePoint, "byName"> => ({
  ...{ id: `edition-${number}`, kind: "edition", at: signedAt, byId: signedBy, round: 0, edition: number },
});

/** `pointId` as in `ComparePoint`. Errors: 401, 403, 404; 409 edition-damaged. */
export function readPoint(app: Springline, actor: Actor, id: string, pointId: string): Result<PointText> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  if (pointId === "reading") return readOwnReading(app, row, person.id);
  const edition = /^edition-(\d{1,9})$/.exec(pointId)?.[1];
  if (edition !== undefined) return readEditionPoint(app, id, Number(edition));
  const moment = /^\d{1,15}$/.test(pointId) ? readMomentRow(app.db, id, Number(pointId)) : undefined;
  if (!moment) return NO_SUCH_POINT;
  const json = readPlanText(app.db, id, moment.hash);
  const plan: unknown = json === undefined ? null : JSON.parse(json);
  return ok({ plan, findings: moment.findings, threads: moment.threads });
}

function readOwnReading(app: Springline, row: PlanRow, userId: string): Result<PointText> {
  const point = readingPoint(app, row.id, userId, openSince(roundsOf(app, row)));
  const reading = point && readReading(app.db, row.id, userId, point.hash);
  return reading ? ok({ plan: reading.plan, findings: [], threads: [] }) : NO_SUCH_POINT;
}

function readEditionPoint(app: Springline, id: string, number: number): Result<PointText> {
  const edition = readSoundEdition(app, id, number);
  if (edition === "damaged") return damagedEdition(number);
  if (!edition) return NO_SUCH_POINT;
  return ok({ plan: JSON.parse(edition.planJson), findings: edition.findings, threads: [] });
}
