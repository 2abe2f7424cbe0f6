"use client";
/** One finding: what is wrong, its level, and the act that fixes it. */
import { useRef } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import { PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { FixAct } from "./fix-act.tsx";
import { JumpLinks } from "./jump-links.tsx";
import styles from "./margin.module.css";
import { CHECK_BROKE } from "./margin-words.ts";
import { RuleLink } from "./rule-link.tsx";
import { slipKey } from "./show-slip.ts";

interface Props {
  readonly session: PlanSession;
  readonly finding: Finding;
  /** The item in whose plate it stands; null for the class. */
  readonly from: string | null;
}

export function FindingSlip({ session, finding, from }: Props) {
  const { run } = usePageActs();
  const slip = useRef<HTMLElement>(null);
  const takeFix = () => slip.current?.querySelector<HTMLElement>("[data-fix]")?.click();
  const onKey = keyHandler(PLAN_COMMANDS, "finding", { run: { ...run, "take-fix": takeFix } });
  const title = ruleTitle(finding.rule) ?? CHECK_BROKE;
  return (
    <article
      ref={slip}
      className={styles.slip}
      tabIndex={-1}
      onKeyDown={(event) => event.target === event.currentTarget && onKey(event)}
      data-finding={slipKey(finding)}
      data-level={finding.level}
      aria-label={title}
    >
      <header className={styles.slipHead}>
        <span className={styles.level}>{LEVEL_WORDS[finding.level]}</span>
        <p className={styles.name}>{title}</p>
      </header>
      <p>{finding.message}</p>
      <div className={styles.slipActs}>
        <FixAct session={session} finding={finding} />
        <JumpLinks ids={finding.items} from={from} />
        <RuleLink finding={finding} />
      </div>
    </article>
  );
}
