/** A return or a sign-off belongs to the round that its lead had before them: of another round it is refused in words. */
import { namesById } from "#db/repos/people-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { listRounds, type RoundRow } from "#db/repos/round-repo.ts";
import { fail, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { shownRound } from "#server/news/shown-round.ts";

type App = Pick<Springline, "db">;

/**
 * Null where the step is of the round that is open. `round`: the number that the lead's page showed; a program that sends none
 * is not asked. Errors: 409 other-round (`details.round`: the one that is open, or null; `endedByName`, `endedAt`, `outcome`).
 */
export function otherRound(app: App, row: PlanRow, round: number | undefined): Result<never> | null {
  if (round === undefined) return null;
  const shown = shownRound(app, row);
  const open = row.state === "handed-in" ? (shown?.number ?? null) : null;
  if (open === round) return null;
  const meant = listRounds(app.db, row.id).find(({ number }) => number === round);
  const byName = meant?.endedBy ? (namesById(app.db).get(meant.endedBy) ?? null) : null;
  const details = {
    round: open,
    endedByName: byName,
    endedAt: meant?.endedAt ?? null,
    outcome: meant?.outcome ?? null,
  };
  return fail(409, "other-round", `${endWords(meant, byName)} ${nextWords(open)}`, details);
}

function endWords(meant: RoundRow | undefined, name: string | null): string {
  const by = name ?? "Somebody";
  switch (meant?.outcome) {
    case "taken-back":
      return `${by} took the plan back in round ${meant.number}, so that round is over.`;
    case "returned":
      return `${by} has returned the plan in round ${meant.number}, so that round is over.`;
    case "signed":
      return `${by} has signed the plan off in round ${meant.number}, so that round is over.`;
    default:
      return "This was written for a round of reading that is not open.";
  }
}

const nextWords = (open: number | null): string =>
  open === null
    ? "Nothing was sent: keep your words until the plan is offered again."
    : `Nothing was sent. It is offered again as round ${open}: look at what has changed, then send it.`;
