"use client";
/** One finding: what is wrong, how much it weighs, and the act that mends it. */
import type { PlanSession } from "#app/_plan/session.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import { ruleById } from "#lib/rules/registry.ts";
import type { Finding } from "#lib/rules/types.ts";
import { JumpLinks, jump } from "./jump-links.tsx";
import styles from "./margin.module.css";
import { MendAct } from "./mend-act.tsx";

export const LEVEL_WORDS: Readonly<Record<FindingLevel, string>> = {
  must: "must fix",
  look: "look again",
  info: "for information",
};

interface Props {
  readonly session: PlanSession;
  readonly finding: Finding;
  readonly selected: boolean;
  /** One line only, where many slips want the same height; its title opens it by going to its item. */
  readonly short: boolean;
}

export function FindingSlip({ session, finding, selected, short }: Props) {
  const title = ruleById(finding.rule)?.title ?? "A check could not run";
  const first = finding.items[0];
  return (
    <article
      className={styles.slip}
      data-level={finding.level}
      data-selected={selected || undefined}
      aria-label={title}
    >
      <header className={styles.slipHead}>
        <p className={styles.name}>
          {short && first !== undefined ? (
            <button type="button" className={styles.title} title={finding.message} onClick={() => jump(session, first)}>
              {title}
            </button>
          ) : (
            title
          )}
        </p>
        <span className={styles.level}>{LEVEL_WORDS[finding.level]}</span>
      </header>
      {!short && <p>{finding.message}</p>}
      {!short && (
        <div className={styles.slipActs}>
          <MendAct session={session} finding={finding} />
          <JumpLinks session={session} ids={finding.items} />
        </div>
      )}
    </article>
  );
}
