/** What stands between two plates: the acts of the change, in the order of hands and feet. */
import { stepWords } from "#lib/acts/act-words.ts";
import { actsInto } from "#lib/acts/planned.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { walkSetups } from "#lib/transitions/walk.ts";

/** By the id of the item that the change leads into; nothing for the first, which is set up during the opening. */
export function changeActs(plan: Plan): ReadonlyMap<string, readonly string[]> {
  return new Map(
    walkSetups(plan).map(({ item, before, to }) => {
      const from = before?.setup ?? null;
      return [item.id, from ? actsInto(plan, from, to).map((act) => stepWords(plan, act, { from, to })) : []];
    }),
  );
}
