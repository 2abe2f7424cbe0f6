/** Which classes are no longer as they were when a fill was worked out for them. */
import { own } from "#lib/plan/lookup.ts";
import { changeSentence } from "../changes/change-words.ts";
import { type ChangedPart, type ChangedSlot, slotChanges } from "../changes/slot-changes.ts";
import { expandMonth } from "../expand.ts";
import type { MonthFile, MonthSlot } from "../types.ts";

/** Which plan fits does not depend on these. */
const FREE: ReadonlySet<ChangedPart> = new Set(["note", "people"]);

/**
 * By class, a sentence: what changed, or that the plan is no longer signed. `filled`: the classes as the fill saw them;
 * `plans`: what it proposes for each.
 */
export function changedSinceFill(
  filled: readonly MonthSlot[],
  plans: Readonly<Record<string, string | null>>,
  now: MonthFile,
): ReadonlyMap<string, string> {
  const ids = new Set(filled.map(({ id }) => id));
  const { dates } = now;
  const changes = slotChanges(
    { dates, slots: filled },
    { dates, slots: expandMonth(now).filter(({ id }) => ids.has(id)) },
  );
  const changed = changes.filter(matters).map((one) => [one.id, changeSentence(one, { was: now, now })] as const);
  const unsigned = Object.entries(plans).flatMap(([slot, plan]) => {
    const facts = plan === null ? undefined : own(now.plans, plan);
    if (plan === null || (facts && facts.known !== false && facts.signed)) return [];
    return [[slot, `The plan ${facts?.title ? `“${facts.title}” ` : ""}is not signed any more.`] as const];
  });
  return new Map([...unsigned, ...changed]);
}

const matters = ({ kind, parts }: ChangedSlot): boolean => kind !== "changed" || parts.some((part) => !FREE.has(part));
