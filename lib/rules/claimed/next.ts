/** What is said to come next, by the names of the plan's moves. */
import { moveName } from "#lib/plan/format.ts";
import { isOtherExercise, isPartOf, mayNameAMove, nameSaidAt, nameWithin } from "#lib/talk/claims/spoken-names.ts";
import type { NextClaim } from "#lib/talk/claims/types.ts";
import { type ClaimedCase, type Contradiction, isBeforeStart } from "./case.ts";

/**
 * Only the name of another move of the plan can be wrong: "water is next" is not about a move. A part of a name counts for
 * the next move, and against it only when it is all that is said.
 */
export function otherNext(c: ClaimedCase, { name: said, at, plain, head = said }: NextClaim): Contradiction {
  const { ctx, n, placed } = c;
  const next = ctx.moves[n + 1];
  const expected = [...(next ? [next] : []), ...(isBeforeStart(c) || !next ? [placed] : [])].map(({ item }) =>
    moveName(ctx.plan, item),
  );
  const named = at === "within" ? nameWithin(said, allNames(c)) : nameSaidAt(said, at, allNames(c));
  if (named === undefined && plain && (isOtherExercise(said, expected) || isOtherExercise(head, expected)))
    return reallyNext(c);
  if (named === undefined) {
    if (
      expected.some((name) => isPartOf(said, name)) ||
      !mayNameAMove(said) ||
      !allNames(c).some((name) => isPartOf(said, name))
    )
      return undefined;
  } else if (expected.includes(named)) return undefined;
  return reallyNext(c);
}

function reallyNext({ ctx, n }: ClaimedCase): string {
  const next = ctx.moves[n + 1];
  return next ? `the next move is ${moveName(ctx.plan, next.item)}` : "nothing follows";
}

function allNames({ ctx }: ClaimedCase): string[] {
  const named = Object.values(ctx.plan.moves).map(({ name }) => name);
  return [...named, ...ctx.moves.map(({ item }) => moveName(ctx.plan, item))];
}
