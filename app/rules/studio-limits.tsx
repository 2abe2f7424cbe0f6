/** A rule's limits to read: what they mean, what this studio has set, what is usual. */

import type { AnyRule } from "#lib/rules/define/types.ts";
import { limitsOf, limitWords } from "#lib/rules/limits.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import styles from "./rules.module.css";

interface StudioLimitsProps {
  readonly rule: Pick<AnyRule, "limits">;
  readonly standard: StudioStandard | null;
}

export function StudioLimits({ rule, standard }: StudioLimitsProps) {
  const limits = limitsOf(rule);
  if (limits.length === 0) return <p>This rule has no limits to set.</p>;
  return (
    <dl className={styles.limits}>
      {limits.map((limit) => {
        const set = standard?.limits?.[limit.name];
        return (
          <div key={limit.name}>
            <dt>{limit.label}</dt>
            <dd>
              <strong>{limitWords(limit, set ?? limit.usual)}</strong>
              {set === undefined ? null : <span className="quiet small">usually {limitWords(limit, limit.usual)}</span>}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
