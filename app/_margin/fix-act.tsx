"use client";
import { useDeferredValue, useMemo } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
/** The one act that fixes a finding, and the one for all findings of its rule, each as one undo step; nothing where there is none or somebody cannot edit the plan. */
import { offsetsIn } from "#lib/formats/units.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { remedyFor, remedyForAll } from "#lib/remedies/remedies.ts";
import type { Remedy } from "#lib/remedies/remedy.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import styles from "./margin.module.css";
import { FIX_ALL } from "./margin-words.ts";
import { goOnFrom } from "./show-slip.ts";

export function FixAct({ session, finding }: { readonly session: PlanSession; readonly finding: Finding }) {
  const { plan, rights, findings } = useSnapshot(session);
  const fix = useLateFix(plan, rights.writes ? finding : null);
  const alike = useMemo(() => findings.filter(({ rule }) => rule === finding.rule), [findings, finding.rule]);
  if (fix === null) return null;
  const take = (button: HTMLElement, taken: Remedy) => {
    goOnFrom(button.closest<HTMLElement>("[data-finding]"));
    takeFix(session, taken);
  };
  return (
    <>
      {fix.note && <p>{fix.note}</p>}
      <button
        type="button"
        className={styles.fix}
        data-fix
        onClick={(event) => take(event.currentTarget, remedyFor(plan, finding) ?? fix)}
      >
        {offsetsIn(fix.label, session.formats)}
      </button>
      {alike.length > 1 && (
        <button
          type="button"
          className={styles.fix}
          onClick={(event) => take(event.currentTarget, remedyForAll(plan, alike) ?? fix)}
        >
          {FIX_ALL}
        </button>
      )}
    </>
  );
}

/** May try several fits of the class, which a letter in the open plate does not wait for: it follows the plan by a moment. */
function useLateFix(plan: Plan, finding: Finding | null): Remedy | null {
  const now = useMemo(() => ({ plan, finding }), [plan, finding]);
  const late = useDeferredValue(now);
  return useMemo(() => late.finding && remedyFor(late.plan, late.finding), [late]);
}
