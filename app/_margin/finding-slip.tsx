"use client";
/** One finding: what is wrong, how much it weighs, and the act that mends it. */
import { useState } from "react";
import type { PlanSession } from "#app/_plan/session.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { ruleById } from "#lib/rules/registry.ts";
import { JumpLinks, jump } from "./jump-links.tsx";
import styles from "./margin.module.css";
import { MendAct } from "./mend-act.tsx";
import { RuleLink } from "./rule-link.tsx";
import { slipKey } from "./show-slip.ts";

interface Props {
  readonly session: PlanSession;
  readonly finding: Finding;
  readonly selected: boolean;
  /** One line only, where many slips want the same height. Its title goes to its item, which opens it. */
  readonly short: boolean;
}

export function FindingSlip({ session, finding, selected, short }: Props) {
  const title = ruleById(finding.rule)?.title ?? "A check could not run";
  const first = finding.items[0];
  const [opened, setOpened] = useState(false);
  const whole = !short || opened;
  const open = () => (first === undefined ? setOpened(!opened) : jump(session, first));
  return (
    <article
      className={styles.slip}
      tabIndex={-1}
      data-finding={slipKey(finding)}
      data-level={finding.level}
      data-selected={selected || undefined}
      data-short={!whole || undefined}
      aria-label={title}
    >
      <header className={styles.slipHead}>
        <p className={styles.name}>
          {short ? (
            <button type="button" className={styles.title} title={title} aria-expanded={whole} onClick={open}>
              {title}
            </button>
          ) : (
            title
          )}
        </p>
        <span className={styles.level}>{LEVEL_WORDS[finding.level]}</span>
      </header>
      {whole && <p>{finding.message}</p>}
      {whole && (
        <div className={styles.slipActs}>
          <MendAct session={session} finding={finding} />
          <JumpLinks session={session} ids={finding.items} />
          <RuleLink finding={finding} />
        </div>
      )}
    </article>
  );
}
