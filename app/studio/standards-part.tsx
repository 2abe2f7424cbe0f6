/** The studio standards: where this studio differs from the rules, and the way to all of them. */
import Link from "next/link";
import type { Standards } from "#lib/plan/schema.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { type LimitUnits, limitsOf, limitWords } from "#lib/rules/limits.ts";
import { RULES } from "#lib/rules/registry.ts";
import styles from "./studio.module.css";

export function StandardsPart({ own, formats }: { readonly own: Standards; readonly formats: LimitUnits }) {
  const changed = RULES.flatMap((rule) => (own[rule.id] ? [{ rule, set: own[rule.id] }] : []));
  return (
    <>
      <div className="spread">
        <h2>Studio standards</h2>
        <Link className="button" href="/rules">
          All {RULES.length} rules
        </Link>
      </div>
      <p className="quiet">
        {changed.length === 0
          ? "Your studio uses every rule with its usual level and limits. Open a rule to change them."
          : "Rules that your studio has changed."}
      </p>
      {changed.length > 0 && (
        <ul className={styles.rules}>
          {changed.map(({ rule, set }) => (
            <li key={rule.id}>
              <Link href={`/rules/${rule.id}`}>{rule.title}</Link>
              <span className="small">
                {[
                  set?.level === undefined ? "" : LEVEL_WORDS[set.level],
                  ...limitsOf(rule).flatMap((limit) => {
                    const value = set?.limits?.[limit.name];
                    return value === undefined ? [] : [`${limit.label}: ${limitWords(limit, value, formats)}`];
                  }),
                ]
                  .filter(Boolean)
                  .join(" · ")}
              </span>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
