"use client";
/** The one act that fixes a finding, as one undo step; nothing where there is none or somebody cannot edit the plan. */
import type { PlanSession } from "#app/_session/session.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { remedyFor } from "#lib/remedies/remedies.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import styles from "./margin.module.css";

export function FixAct({ session, finding }: { readonly session: PlanSession; readonly finding: Finding }) {
  const { plan, rights } = useSnapshot(session);
  const fix = rights.writes ? remedyFor(plan, finding) : null;
  if (fix === null) return null;
  return (
    <>
      {fix.note && <p>{fix.note}</p>}
      <button type="button" className={styles.fix} onClick={() => takeFix(session, fix)}>
        {fix.label}
      </button>
    </>
  );
}
