/** What is checked: every rule as it documents itself. What a studio has changed stands on the rule's own page. */
import type { Metadata } from "next";
import Link from "next/link";
import { MONTH_RULES } from "#lib/month/check/registry.ts";
import { plural } from "#lib/plan/format.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { RULES } from "#lib/rules/registry.ts";
import styles from "../help.module.css";
import { BackToHelp, HelpFrame } from "../help-frame.tsx";

export const metadata: Metadata = { title: "Help: Rules" };

interface ShownRule {
  readonly id: string;
  readonly title: string;
  readonly why: string;
  readonly fix: string;
  readonly level: keyof typeof LEVEL_WORDS;
}

export default function HelpRulesPage() {
  return (
    <HelpFrame>
      <BackToHelp />
      <h1>Rules</h1>
      <p className={styles.about}>
        What a plan and a month are checked for while they are written, why, and what to do. A studio may set levels and
        limits of its own.
      </p>
      <RulesOf title="Of a plan" at="/rules" rules={RULES} />
      <RulesOf title="Of a month" at="/rules/month" rules={MONTH_RULES} />
    </HelpFrame>
  );
}

interface RulesOfProps {
  readonly title: string;
  readonly at: string;
  readonly rules: readonly ShownRule[];
}

function RulesOf({ title, at, rules }: RulesOfProps) {
  return (
    <section aria-label={title}>
      <h2>
        {title} <span className="quiet small">{plural(rules.length, "rule")}</span>
      </h2>
      <dl className={styles.words}>
        {rules.map(({ id, title: problem, why, fix, level }) => (
          <div key={id}>
            <dt>
              <Link href={`${at}/${id}`}>{problem}</Link> <span className="quiet small">{LEVEL_WORDS[level]}</span>
            </dt>
            <dd>
              {why} {fix}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
