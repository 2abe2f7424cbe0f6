/** A rule's limits to read: what they mean, what this house has, what the rule itself has. */

import type { AnyRule } from "#lib/rules/define/types.ts";
import { limitsOf, limitWords } from "#lib/rules/limits.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import styles from "./rules.module.css";

export function HouseTable({ rule, standard }: { readonly rule: AnyRule; readonly standard: StudioStandard | null }) {
  const limits = limitsOf(rule);
  if (limits.length === 0) return <p>This rule has no limits: it holds or it does not.</p>;
  return (
    <dl className={styles.limits}>
      {limits.map((limit) => {
        const house = standard?.limits?.[limit.name];
        return (
          <div key={limit.name}>
            <dt>{limit.label}</dt>
            <dd>
              <strong>{limitWords(limit, house ?? limit.usual)}</strong>
              {house === undefined ? null : (
                <span className="quiet small">the rule itself: {limitWords(limit, limit.usual)}</span>
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
