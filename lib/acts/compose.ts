/** Writes a change as one set-up line, its acts in the order in which they can safely be done. */
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { setupOf } from "#lib/transitions/transitions.ts";
import { actWords, type SetupEnds, startPlaceWords } from "./act-words.ts";
import { type PlannedAct, plannedActs } from "./planned.ts";

/** What a set-up line can tell: the planned acts, and where people start, which comes before hands and feet. */
export type SetupAct = PlannedAct | { readonly act: "place"; readonly words: string };

const TAKEN_LAST: readonly string[] = ["handles-cross", "handles-up", "strap-on"];

export function setupActs(plan: Plan, before: MoveItem | undefined, after: MoveItem): SetupAct[] {
  const acts: SetupAct[] = plannedActs(plan, before, after);
  const words = startPlaceWords(before, after);
  if (words === null) return acts;
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
  const clauses = new Set(acts.map((act) => (act.act === "place" ? act.words : actWords(act, ends))));
  const said = [...clauses].join(", ");
  return { kind: "setup", text: `${said.charAt(0).toUpperCase()}${said.slice(1)}.` };
}
