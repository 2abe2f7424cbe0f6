/** Every rule a plan is checked against, by its level in this studio. All of it is read from the rules. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { MONTH_RULES } from "#lib/month/check/registry.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { can } from "#lib/policy/can.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS, STANDARD_LEVELS, type StandardLevel } from "#lib/rules/level-words.ts";
import { RULES } from "#lib/rules/registry.ts";
import { type MonthSettings, readMonthSettings } from "#server/month-facts/month-settings.ts";
import { SafetyNote } from "../_parts/safety-note.tsx";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import styles from "./rules.module.css";

export const metadata: Metadata = { title: "Rules" };

export default async function RulesPage() {
  const visit = await requirePerson("/rules");
  const { who, studio } = visit;
  if (!can(who.actor, "library.read")) notFound();
  const settings = readMonthSettings(visit.app, who.actor);
  const rules = RULES.map((rule) => {
    const standard = own(studio.standards, rule.id);
    return { rule, level: standard?.level ?? rule.level, changed: standard !== undefined };
  });
  return (
    <Shell visit={visit} section="rules">
      <h1>Rules</h1>
      <p className={styles.lead}>
        Every plan is checked against these {RULES.length} while it is written.{" "}
        {can(who.actor, "standards.manage")
          ? "Open one to change its level or its limits for your studio."
          : "A manager sets each rule’s level and limits for your studio."}
      </p>
      <p>
        <Link className="link-line" href="/rubric">
          The rubric that leads mark by
        </Link>
      </p>
      {can(who.actor, "remarks.write") && (
        <p>
          <Link href="/remarks">Remarks of the studio</Link>: what leads write about findings and moves.
        </p>
      )}
      <SafetyNote sentences={SAFETY_NOTE} />
      {STANDARD_LEVELS.map((level) => (
        <RulesOf key={level} level={level} rules={rules.filter((entry) => entry.level === level)} />
      ))}
      <MonthRules standards={settings.ok ? settings.value.standards : null} />
    </Shell>
  );
}

/** The rules that months are checked against; none for somebody who may not read the programme. */
function MonthRules({ standards }: { readonly standards: MonthSettings["standards"] | null }) {
  if (standards === null) return null;
  return (
    <section className={styles.group} aria-labelledby="month">
      <h2 id="month">
        Of a month <span className={styles.count}>{plural(MONTH_RULES.length, "rule")}</span>
      </h2>
      <ul className={styles.list}>
        {MONTH_RULES.map((rule) => (
          <li key={rule.id}>
            <Link href={`/rules/month/${rule.id}`}>{rule.title}</Link>
            <p>{rule.why}</p>
            <span className="quiet small">{LEVEL_WORDS[own(standards, rule.id)?.level ?? rule.level]}</span>
            {own(standards, rule.id) && <span className={styles.mark}>changed by your studio</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}

interface RulesOfProps {
  readonly level: StandardLevel;
  readonly rules: readonly { readonly rule: AnyRule; readonly changed: boolean }[];
}

function RulesOf({ level, rules }: RulesOfProps) {
  if (rules.length === 0) return null;
  return (
    <section className={styles.group} aria-labelledby={`level-${level}`}>
      <h2 id={`level-${level}`} className={level}>
        {LEVEL_WORDS[level]} <span className={styles.count}>{plural(rules.length, "rule")}</span>
      </h2>
      <ul className={styles.list}>
        {rules.map(({ rule, changed }) => (
          <li key={rule.id}>
            <Link href={`/rules/${rule.id}`}>{rule.title}</Link>
            <p>{rule.why}</p>
            {changed && <span className={styles.mark}>changed by your studio</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}
