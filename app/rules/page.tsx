/** Every rule a plan is checked against, by how much it weighs in this house. All of it is read off the rules. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { can } from "#lib/policy/can.ts";
import { LEVEL_WORDS, STANDARD_LEVELS } from "#lib/rules/level-words.ts";
import { RULES } from "#lib/rules/registry.ts";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import styles from "./rules.module.css";
import { SafetyNote } from "./safety-note.tsx";

export const metadata: Metadata = { title: "Rules" };

export default async function RulesPage() {
  const visit = await requirePerson("/rules");
  const { who, studio } = visit;
  if (!can(who.actor, "library.read")) notFound();
  const rules = RULES.map((rule) => {
    const house = own(studio.standards, rule.id);
    return { rule, level: house?.level ?? rule.level, house: house !== undefined };
  });
  return (
    <Shell visit={visit} section="rules">
      <h1>Rules</h1>
      <p className={styles.lead}>
        Every plan is checked against these {RULES.length} while it is written.{" "}
        {can(who.actor, "standards.manage")
          ? "Open one to change how much it weighs in your studio, and within which limits."
          : "How much each weighs, and within which limits, is for your studio to say: a manager sets it."}
      </p>
      <SafetyNote sentences={SAFETY_NOTE} />
      {STANDARD_LEVELS.map((level) => {
        const these = rules.filter((entry) => entry.level === level);
        if (these.length === 0) return null;
        return (
          <section key={level} className={styles.group} aria-labelledby={`level-${level}`}>
            <h2 id={`level-${level}`} className={level}>
              {LEVEL_WORDS[level]} <span className={styles.count}>{plural(these.length, "rule")}</span>
            </h2>
            <ul className={styles.list}>
              {these.map(({ rule, house }) => (
                <li key={rule.id}>
                  <Link href={`/rules/${rule.id}`}>{rule.title}</Link>
                  <p>{rule.why}</p>
                  {house && <span className={styles.mark}>set by this house</span>}
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </Shell>
  );
}
