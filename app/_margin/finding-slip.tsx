"use client";
import { useRef } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { useFormats } from "#app/_parts/formats.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import { useAccepted } from "#app/_session/accepted-now.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import { PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useTypedList } from "#app/_session/typed/use-typed.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
/** One finding: what is wrong, its level, and the act that fixes it. One that a lead accepted is folded, with who and why. */
import type { Finding } from "#lib/rules/define/types.ts";
import { findingWords } from "#lib/rules/finding-words.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { FindingActs } from "./finding-acts.tsx";
import { lateAcceptedFinding, lateStandsAgain } from "./late-accept.ts";
import styles from "./margin.module.css";
import { CHECK_BROKE, FINDING_GONE } from "./margin-words.ts";
import { slipKey } from "./show-slip.ts";

interface Props {
  readonly session: PlanSession;
  readonly finding: Finding;
  /** The item in whose plate it stands; null for the class. */
  readonly from: string | null;
  /** It is not found any more; the slip is there for the words that somebody is writing about it. */
  readonly isGone?: boolean;
}

export function FindingSlip({ session, finding, from, isGone = false }: Props) {
  const { run } = usePageActs();
  const f = useFormats();
  const now = useAccepted(useSnapshot(session));
  const accepted = now.of.get(finding);
  const again = now.again.get(finding);
  const typing = useTypedList(session.typed).some(
    (typed) => typed.finding?.key !== undefined && typed.finding.key === finding.key,
  );
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
      data-level={isGone ? "info" : accepted ? "accepted" : finding.level}
      aria-label={title}
    >
      <header className={styles.slipHead}>
        <span className={styles.level}>{isGone ? "gone" : accepted ? "accepted" : LEVEL_WORDS[finding.level]}</span>
        <p className={styles.name}>{title}</p>
      </header>
      {accepted ? (
        <LatePart part={lateAcceptedFinding} props={{ session, accepted, message: findingWords(finding, f) }} />
      ) : (
        <p>{findingWords(finding, f)}</p>
      )}
      {again && <LatePart part={lateStandsAgain} props={{ accepted: again }} />}
      <p role="status" className={isGone ? styles.pin : "visually-hidden"}>
        {isGone && FINDING_GONE}
      </p>
      {(!accepted || typing) && <FindingActs {...{ session, finding, from, isGone }} />}
    </article>
  );
}
