/** Writes a change as one set-up line, its acts in the order in which they can safely be done. */
import { sentenceCase } from "#lib/plan/format.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { setupOf } from "#lib/transitions/transitions.ts";
import { actWords, type SetupEnds, startPlaceWords } from "./act-words.ts";
import { actsInto, type PlannedAct, plannedActs } from "./planned.ts";

/** What a set-up line can tell: the planned acts, and where people start, which comes before hands and feet. */
export type SetupAct = PlannedAct | { readonly act: "place"; readonly words: string };

const TAKEN_LAST: readonly string[] = ["handles-cross", "handles-up", "strap-on"];

export function setupActs(plan: Plan, before: MoveItem | undefined, after: MoveItem): SetupAct[] {
  return withPlace(plannedActs(plan, before, after), before, after);
}

/** All that the first move of a class needs, from nothing. Empty where the move is not known. */
export function firstSetupActs(plan: Plan, first: MoveItem): SetupAct[] {
  const to = setupOf(plan, first);
  return to ? withPlace(actsInto(plan, null, to), undefined, first) : [];
}

function withPlace(acts: readonly SetupAct[], before: MoveItem | undefined, after: MoveItem): SetupAct[] {
  const words = startPlaceWords(before, after);
  if (words === null) return [...acts];
  const taken = acts.findIndex(({ act }) => TAKEN_LAST.includes(act));
  return acts.toSpliced(taken < 0 ? acts.length : taken, 0, { act: "place", words });
}

/** A line that tells these acts in their order; null for none. */
export function setupLine(
  plan: Plan,
  before: MoveItem | undefined,
  after: MoveItem,
  acts: readonly SetupAct[],
): ScriptLine | null {
  const to = setupOf(plan, after);
  if (!to || acts.length === 0) return null;
  const ends: SetupEnds = { from: before ? setupOf(plan, before) : null, to };
  const clauses = new Set(onOneSide(acts, ends).map((act) => (act.act === "place" ? act.words : actWords(act, ends))));
  return { kind: "setup", text: `${sentenceCase([...clauses].join(", "))}.` };
}

/**
 * "Lie on your left side" says position and side. Where one foot or hand holds something, the side is the one that works,
 * which may be the upper one, so it is said apart.
 */
function onOneSide(acts: readonly SetupAct[], { to }: SetupEnds): readonly SetupAct[] {
  const isFree = to.feet !== "cable-strap" && to.hands !== "one-handle";
  const liesDown = acts.some((act) => act.act === "position" && act.position === "side-lying");
  if (!liesDown || !isFree || !acts.some(({ act }) => act === "side")) return acts;
  return acts.flatMap((act): SetupAct[] => {
    if (act.act === "side") return [];
    return [act.act === "position" ? { act: "place", words: "lie on your {side} side" } : act];
  });
}
