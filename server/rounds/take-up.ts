/** A lead takes a round of reading up, lets it go, or takes it over from another lead. */
import * as z from "zod";
import { namesById } from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { type RoundRow, setReader } from "#db/repos/round-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Actor } from "#lib/policy/can.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceState } from "#server/news/plan-news.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { openRoundOf } from "./keep-rounds.ts";
import { beingRead, NOT_OFFERED, NOT_YOURS_TO_LET_GO } from "./refusals.ts";

export const takeUpSchema = z.strictObject({
  on: z.boolean(),
  /** The id of the lead it is taken over from. */
  from: z.string().min(1).max(64).optional(),
});
export type TakeUpBody = z.infer<typeof takeUpSchema>;

/**
 * Taking up twice, or letting go what nobody reads, changes nothing. Errors: 401, 403, 404; 409 not-offered, being-read
 * (`details.readerId`, `reader`, `since`), not-reader.
 */
export function takeUp(app: Springline, actor: Actor, id: string, body: TakeUpBody): Result<{ round: number }> {
  const opened = openPlan(app, actor, id, "plan.hand-back");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  if (row.state !== "handed-in") return NOT_OFFERED;
  const taken = inTransaction(app.db, (): Result<{ round: number; changed: boolean }> => {
    const round = openRoundOf(app, row);
    const refused = refusal(app, round, person.id, body);
    if (refused) return refused;
    const changed = body.on !== (round.readerId === person.id);
    if (changed) store(app, round, person.id, body.on);
    return ok({ round: round.number, changed });
  });
  if (!taken.ok) return taken;
  if (taken.value.changed) announceState(app, id);
  return ok({ round: taken.value.round });
}

function refusal(app: Springline, round: RoundRow, me: string, { on, from }: TakeUpBody): Result<never> | null {
  const { readerId, readSince } = round;
  if (readerId === me) return null;
  if (!on) return readerId === null ? null : NOT_YOURS_TO_LET_GO;
  if (from === (readerId ?? undefined)) return null;
  if (readerId === null) return fail(409, "let-go", "They are not reading it any more. Take it up for yourself.");
  return beingRead({ readerId, reader: namesById(app.db).get(readerId) ?? null, since: readSince });
}

function store(app: Springline, round: RoundRow, me: string, on: boolean): void {
  const at = app.now();
  setReader(app.db, round, on ? { id: me, since: at } : null);
  const body = { round: round.number, ...(on && round.readerId !== null ? { from: round.readerId } : {}) };
  const kind = on ? "reading-taken-up" : "reading-let-go";
  addToRecord(app.db, { at, actorId: me, subject: `plan/${round.planId}`, kind, body });
}
