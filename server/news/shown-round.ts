/** The round of a plan as pages are told it. */
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { listRounds, newestRound, type RoundRow } from "#db/repos/round-repo.ts";
import type { RoundEnded, RoundNews } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/context/springline.ts";

type App = Pick<Springline, "db">;

/**
 * The newest round. A plan that was offered before rounds were kept shows one too; it is stored when the plan is next
 * touched. Undefined before the first.
 */
export function shownRound(app: App, row: PlanRow): RoundRow | undefined {
  const last = newestRound(app.db, row.id);
  return row.state === "handed-in" && last?.outcome !== null ? missingRound(row, last) : last;
}

export function missingRound(row: PlanRow, last: RoundRow | undefined): RoundRow {
  return {
    planId: row.id,
    number: (last?.number ?? 0) + 1,
    offeredBy: row.handedInBy ?? row.ownerId,
    offeredAt: row.handedInAt ?? row.updatedAt,
    readerId: null,
    readSince: null,
    outcome: null,
    endedBy: null,
    endedAt: null,
    mainPoints: [],
    edition: null,
  };
}

export function roundNews(app: App, row: PlanRow): RoundNews | undefined {
  const round = shownRound(app, row);
  if (!round) return undefined;
  const { number, readerId, readSince, outcome, mainPoints } = round;
  const isRead = outcome === null && readerId !== null;
  return {
    number,
    reader: isRead ? { id: readerId, name: namesById(app.db).get(readerId) ?? "Another lead" } : null,
    since: isRead ? readSince : null,
    mainPoints: row.state === "handed-back" && outcome === "returned" ? mainPoints : [],
    ended: endedOf(app, round),
    before: endedOf(
      app,
      listRounds(app.db, row.id).find((one) => one.number === number - 1),
    ),
  };
}

function endedOf(app: App, round: RoundRow | undefined): RoundEnded | null {
  const { outcome = null, endedBy = null, endedAt = null } = round ?? {};
  if (outcome === null || endedBy === null || endedAt === null) return null;
  return { outcome, byId: endedBy, byName: namesById(app.db).get(endedBy) ?? FORMER_MEMBER, at: endedAt };
}
