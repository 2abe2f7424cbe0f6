/**
 * Opens and ends rounds of reading and keeps the plan as it was at each step (INV-27). Everything here is called inside the
 * transaction of the step itself.
 */
import { insertMoment } from "#db/repos/moment-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { endRoundRow, insertRound, newestRound, type RoundRow } from "#db/repos/round-repo.ts";
import { listThreads } from "#db/repos/thread-repo.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import type { MomentKind, RoundOutcome, ThreadThen } from "#lib/rounds/rounds.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { Result } from "#server/base/result.ts";
import type { Assessment } from "#server/context/assessment.ts";
import type { Springline } from "#server/context/springline.ts";
import { missingRound } from "#server/news/shown-round.ts";

type App = Pick<Springline, "db" | "now">;

/** What a moment holds of the plan itself. */
export interface MomentText {
  readonly hash: string;
  /** Canonical JSON; null when the plan could not be read. */
  readonly planJson: string | null;
  readonly findings: readonly Finding[];
}

/** A plan that cannot be read just now can still be returned and taken back; its moment then holds no text. */
export const NO_TEXT: MomentText = { hash: "", planJson: null, findings: [] };

/**
 * A plan that is not a valid file yet is kept as the server reads it: what a page shows, without items of kinds that this
 * version does not know.
 */
export const momentText = ({ plan, hash, findings }: Assessment): MomentText => ({
  hash,
  planJson: canonicalJson(plan),
  findings,
});

export const textIfRead = (found: Result<Assessment>): MomentText => (found.ok ? momentText(found.value) : NO_TEXT);

interface Step {
  readonly actorId: string;
  readonly note: string | null;
  readonly text: MomentText;
}

export function openRound(app: App, planId: string, { actorId, note, text }: Step): number {
  const number = (newestRound(app.db, planId)?.number ?? 0) + 1;
  insertRound(app.db, { planId, number, offeredBy: actorId, offeredAt: app.now() });
  addMoment(app, { planId, round: number }, "offered", { actorId, note, text });
  return number;
}

interface Ending extends Step {
  readonly outcome: RoundOutcome;
  readonly mainPoints?: readonly string[];
  readonly edition?: number;
}

/** Answers the number of the round that has ended. */
export function endRound(app: App, row: PlanRow, { outcome, mainPoints = [], edition, ...step }: Ending): number {
  const { number } = openRoundOf(app, row);
  const end = { outcome, endedBy: step.actorId, endedAt: app.now(), mainPoints, edition: edition ?? null };
  if (!endRoundRow(app.db, { planId: row.id, number }, end)) throw new Error(`round ${number} has already ended`);
  addMoment(app, { planId: row.id, round: number }, outcome, step);
  if (mainPoints.length > 0) {
    const body = { round: number, mainPoints };
    const entry = { at: app.now(), actorId: step.actorId, subject: `plan/${row.id}`, kind: "main-points", body };
    addToRecord(app.db, entry);
  }
  return number;
}

/**
 * The round that is open for a plan that is offered for reading. One that was offered before rounds were kept gets its round
 * here, with who offered it and when; what it was then is not known.
 */
export function openRoundOf(app: Pick<Springline, "db">, row: PlanRow): RoundRow {
  const last = newestRound(app.db, row.id);
  if (last && last.outcome === null) return last;
  const made = missingRound(row, last);
  insertRound(app.db, made);
  return made;
}

/** An edition was withdrawn: its text is kept as a moment of the round that it came from, 0 for one from before rounds. */
export const keepWithdrawn = (app: App, planId: string, round: number | null, step: Step): void =>
  addMoment(app, { planId, round: round ?? 0 }, "withdrawn", step);

function addMoment(
  app: App,
  { planId, round }: { readonly planId: string; readonly round: number },
  kind: MomentKind,
  { actorId, note, text }: Step,
): void {
  insertMoment(app.db, {
    planId,
    round,
    kind,
    at: app.now(),
    actorId,
    note,
    ...text,
    threads: threadsNow(app, planId),
  });
}

const threadsNow = (app: App, planId: string): ThreadThen[] =>
  listThreads(app.db, planId).map(({ id, settled, comments }) => ({ id, settled, comments: comments.length }));
