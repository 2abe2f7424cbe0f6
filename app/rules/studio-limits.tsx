/** A rule's limits to read: what they mean, what this studio has set, what is usual. */

import { tagWords } from "#lib/plan/format.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { type LimitUnits, limitsOf, limitWords } from "#lib/rules/limits.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import styles from "./rules.module.css";

interface StudioLimitsProps {
  readonly rule: Pick<AnyRule, "limits">;
  readonly standard: StudioStandard | null;
  readonly formats: LimitUnits;
}

export function StudioLimits({ rule, standard, formats }: StudioLimitsProps) {
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
              <strong>
                {limit.kind === "other" ? byGroupWords(set) : limitWords(limit, set ?? limit.usual, formats)}
              </strong>
              {set === undefined || limit.kind === "other" ? null : (
                <span className="quiet small">usually {limitWords(limit, limit.usual, formats)}</span>
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

/** A limit said for single muscle groups: "glutes 400, calves 24". */
function byGroupWords(set: unknown): string {
  const entries = typeof set === "object" && set !== null ? Object.entries(set) : [];
  return entries.length === 0 ? "none" : entries.map(([group, value]) => `${tagWords(group)} ${value}`).join(", ");
}
