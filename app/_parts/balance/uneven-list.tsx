/** Each lopsided group in a sentence, with links to the items that make it so. */
import type { Balance } from "#lib/balance/balance.ts";
import { type UnevenPair, unevenGroups } from "#lib/balance/uneven.ts";
import { moveName, plainNumber, plural, secondsWords, tagWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import styles from "./balance.module.css";

interface UnevenListProps {
  readonly plan: Plan;
  readonly balance: Balance;
  readonly onGo: (item: string) => void;
}

/** Pairs shown at most for one group. */
const SHOWN = 3;

export function UnevenList({ plan, balance, onGo }: UnevenListProps) {
  const uneven = unevenGroups(plan, balance);
  if (Object.keys(balance.groups).length === 0) return null;
  if (uneven.length === 0) return <p className={styles.even}>Left and right match in every group.</p>;
  return (
    <>
      <p className={styles.sum}>
        <b>{`${plural(uneven.length, "group")} uneven`}</b> between left and right.
      </p>
      <ul className={`problem ${styles.uneven}`}>
        {uneven.map(({ group, more, by, pairs }) => (
          <li key={group}>
            <span>
              <b>{tagWords(group)}</b>
              {`: ${plainNumber(by)} s more on the ${more}`}
            </span>
            {pairs.slice(0, SHOWN).map((pair) => (
              <button
                key={pair.goTo}
                type="button"
                className="text-button text-button-low"
                onClick={() => onGo(pair.goTo)}
              >
                {pairWords(plan, pair)}
              </button>
            ))}
            {pairs.length > SHOWN && (
              <span className="quiet">{`and ${plural(pairs.length - SHOWN, "more pair")}`}</span>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

/** A number and its unit stay on one line. */
const NO_BREAK = "\u00a0";

function pairWords(plan: Plan, { left, right }: UnevenPair): string {
  const one = left ?? right;
  const side = (item: typeof left) => (item ? secondsWords(item.seconds).replace(" ", NO_BREAK) : "missing");
  return `${one ? moveName(plan, one) : ""}: left ${side(left)}, right ${side(right)}`;
}
