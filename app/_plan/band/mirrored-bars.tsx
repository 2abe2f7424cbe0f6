"use client";
/** Left against right as mirrored bars of the groups worked most; a lopsided group looks lopsided and says so. */
import type { Balance, GroupBalance } from "#lib/balance/balance.ts";
import { plainNumber, tagWords } from "#lib/plan/format.ts";
import styles from "./band.module.css";

/** Groups shown at most. */
const SHOWN = 4;
/** A difference from this share of the larger side on counts as lopsided (common practice, no source). */
const LOPSIDED = 0.05;

export function MirroredBars({ balance, all = false }: { balance: Balance; all?: boolean }) {
  const groups = Object.entries(balance.groups)
    .map(([group, b]) => ({ group, b, lopsided: isLopsided(b) }))
    .sort((a, b) => Number(b.lopsided) - Number(a.lopsided) || b.b.seconds - a.b.seconds)
    .slice(0, all ? undefined : SHOWN);
  const longest = Math.max(1, ...groups.flatMap(({ b }) => [b.left, b.right]));
  if (groups.length === 0) return null;
  return (
    <figure className={styles.bars} data-all={all || undefined}>
      <figcaption className="visually-hidden">Left against right, weighted seconds</figcaption>
      <ul>
        {groups.map(({ group, b, lopsided }) => (
          <li key={group} data-lopsided={lopsided || undefined}>
            <span className={styles.group}>{tagWords(group)}</span>
            <span className={styles.left} aria-hidden="true">
              <span style={{ width: `${(b.left / longest) * 100}%` }} />
            </span>
            <span className={styles.right} aria-hidden="true">
              <span style={{ width: `${(b.right / longest) * 100}%` }} />
            </span>
            <span className="visually-hidden">
              {`left ${plainNumber(b.left)} s, right ${plainNumber(b.right)} s${lopsided ? ", uneven" : ""}`}
            </span>
          </li>
        ))}
      </ul>
    </figure>
  );
}

function isLopsided(b: GroupBalance): boolean {
  return Math.abs(b.left - b.right) > LOPSIDED * Math.max(b.left, b.right);
}
