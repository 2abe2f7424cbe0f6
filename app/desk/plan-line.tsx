/**
 * One plan of a list: a stretch of rail as long as its class (an hour fills the width), its title, and its facts in
 * words.
 */
import Link from "next/link";
import type { ReactNode } from "react";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";
import { lengthWords } from "../_parts/time-words.ts";
import styles from "./desk.module.css";

const WHOLE_SECONDS = 3600;

interface PlanLineProps {
  readonly plan: PlanSummary;
  readonly href?: string;
  readonly facts: ReactNode;
  readonly children?: ReactNode;
}

export function PlanLine({ plan, href, facts, children }: PlanLineProps) {
  const share = Math.min(1, plan.lengthSeconds / WHOLE_SECONDS);
  const title = planTitle(plan.title);
  return (
    <li className={styles.line}>
      <span className={styles.length}>
        <span className="mono">{lengthWords(plan.lengthSeconds)}</span>
        <span
          className={styles.stretch}
          data-state={plan.state}
          style={{ width: `${share * 100}%` }}
          aria-hidden="true"
        />
      </span>
      <span className={styles.words}>
        {href ? (
          <Link className={styles.title} href={href}>
            {title}
          </Link>
        ) : (
          <span className={styles.title}>{title}</span>
        )}
        <span className={styles.facts}>{facts}</span>
      </span>
      {children ? <span className={styles.acts}>{children}</span> : null}
    </li>
  );
}
