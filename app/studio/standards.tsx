/** The house standards: where this house differs from the rules, and the way to all of them. */
import Link from "next/link";
import type { Standards as HouseStandards } from "#lib/plan/schema.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { limitsOf, limitWords } from "#lib/rules/limits.ts";
import { RULES } from "#lib/rules/registry.ts";
import styles from "./studio.module.css";

export function Standards({ own }: { readonly own: HouseStandards }) {
  const set = RULES.flatMap((rule) => (own[rule.id] ? [{ rule, house: own[rule.id] }] : []));
  return (
    <>
      <div className="spread">
        <h2>House standards</h2>
        <Link className="button" href="/rules">
          All {RULES.length} rules
        </Link>
      </div>
      <p className="quiet">
        {set.length === 0
          ? "This house has every rule as it is. Open one to change what it weighs, or its limits."
          : "Where this house differs from the rules as they are."}
      </p>
      {set.length > 0 && (
        <ul className={styles.rules}>
          {set.map(({ rule, house }) => (
            <li key={rule.id}>
              <Link href={`/rules/${rule.id}`}>{rule.title}</Link>
              <span className="small">
                {[
                  house?.level === undefined ? "" : LEVEL_WORDS[house.level],
                  ...limitsOf(rule).flatMap((limit) => {
                    const value = house?.limits?.[limit.name];
                    return value === undefined ? [] : [`${limit.label}: ${limitWords(limit, value)}`];
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
