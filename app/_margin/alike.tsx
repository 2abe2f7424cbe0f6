"use client";
import { useMemo } from "react";
import { useAccepted } from "#app/_session/accepted-now.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { isAboutMissingWords } from "#lib/draft/about-words.ts";
/** What one rule found on several plates, as one line with the act that fixes all of it. In the panel of the class. */
import { offsetsIn } from "#lib/formats/units.ts";
import { remedyForAll } from "#lib/remedies/remedies.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import styles from "./margin.module.css";
import { ALIKE, CHECK_BROKE, onPlates } from "./margin-words.ts";

/** Fewer are read as quickly on their plates. */
const LEAST = 3;

interface AlikeProps {
  readonly session: PlanSession;
  /** Items for which lines are proposed: the words that they miss are one thing, told by the draft. */
  readonly inDraft: { has(itemId: string): boolean };
}

export function Alike({ session, inDraft }: AlikeProps) {
  const { waiting: findings } = useAccepted(useSnapshot(session));
  const groups = useMemo(() => {
    const isDrafted = (finding: Finding) => isAboutMissingWords(finding) && finding.items.some((id) => inDraft.has(id));
    return alike(findings.filter((finding) => !isDrafted(finding)));
  }, [findings, inDraft]);
  if (groups.length === 0) return null;
  return (
    <section className={styles.list} aria-label={ALIKE}>
      <h3>{ALIKE}</h3>
      <ul className={styles.slips}>
        {groups.map((group) => (
          <AlikeLine key={`${group[0]?.level} ${group[0]?.rule}`} session={session} findings={group} />
        ))}
      </ul>
    </section>
  );
}

function AlikeLine({ session, findings }: { readonly session: PlanSession; readonly findings: readonly Finding[] }) {
  const { plan, rights } = useSnapshot(session);
  const { show } = usePageActs();
  const fix = useMemo(() => (rights.writes ? remedyForAll(plan, findings) : null), [plan, findings, rights.writes]);
  const [first] = findings;
  if (!first) return null;
  return (
    <li className={styles.slip} data-level={first.level}>
      <p>
        <span className={styles.level}>{LEVEL_WORDS[first.level]}</span> {ruleTitle(first.rule) ?? CHECK_BROKE}:{" "}
        {onPlates(findings.length)}
      </p>
      <div className={styles.slipActs}>
        {fix && (
          <button type="button" className={styles.fix} onClick={() => takeFix(session, fix)}>
            {offsetsIn(fix.label, session.formats)}
          </button>
        )}
        <button
          type="button"
          className="text-button text-button-low small"
          onClick={() => show(first.items[0] ?? null)}
        >
          Go to the first
        </button>
      </div>
    </li>
  );
}

/** By rule, those of several items; what must be fixed first, then the most frequent. */
function alike(findings: readonly Finding[]): readonly (readonly Finding[])[] {
  const byRule = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.items.length === 0 || finding.level === "info") continue;
    const key = `${finding.level} ${finding.rule}`;
    byRule.set(key, [...(byRule.get(key) ?? []), finding]);
  }
  const isMust = (group: readonly Finding[]) => Number(group[0]?.level === "must");
  return [...byRule.values()]
    .filter((group) => group.length >= LEAST)
    .sort((a, b) => isMust(b) - isMust(a) || b.length - a.length);
}
