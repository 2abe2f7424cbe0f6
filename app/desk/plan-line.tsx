/** One plan of a list: its class in small on a stretch of rail, its title, and its facts in words. */
import Link from "next/link";
import type { ReactNode } from "react";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";
import { lengthWords } from "../_parts/time-words.ts";
import { ClassInSmall } from "./class-in-small.tsx";
import styles from "./desk.module.css";

interface PlanLineProps {
  readonly plan: PlanSummary & { readonly strip?: string | null };
  readonly href?: string;
  readonly facts: ReactNode;
  readonly children?: ReactNode;
}

export function PlanLine({ plan, href, facts, children }: PlanLineProps) {
  const title = planTitle(plan.title);
  return (
    <li className={styles.line}>
      <span className={styles.length}>
        <span className="mono">{lengthWords(plan.lengthSeconds)}</span>
        <ClassInSmall strip={plan.strip ?? null} lengthSeconds={plan.lengthSeconds} />
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
