/** What stands between two plates: the acts of the change, in the order of hands and feet. */
import { useState } from "react";
import { stepWords } from "#lib/acts/act-words.ts";
import { actsInto } from "#lib/acts/planned.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { PartsReader } from "#lib/plan/parts.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Tellings } from "#lib/talk/telling.ts";
import { walkSetups } from "#lib/transitions/walk.ts";

/** By the id of the item that the change leads into; nothing for the first, which is set up during the opening. Once a plan. */
export const changeActs = perValue((plan: Plan): ReadonlyMap<string, readonly string[]> => {
  return new Map(
    walkSetups(plan, UNTIMED).map(({ item, before, to }) => {
      const from = before?.setup ?? null;
      return [item.id, from ? actsInto(plan, from, to).map((act) => stepWords(plan, act, { from, to })) : []];
    }),
  );
});

/** How long it takes to tell a change does not matter to what is done in it. */
const UNTIMED: Tellings = new Map();

/** The same for a plan that is written: worked out again only when a set-up changes. */
export function useChangeActs(plan: Plan): ReadonlyMap<string, readonly string[]> {
  const [reader] = useState(() => new PartsReader());
  return changeActs(reader.read(plan).setups);
}
