"use client";
/** The groups in words, the most worked first; each lights its part of the figure. */
import type { ShadedGroup } from "#lib/body-map/shade.ts";
import styles from "./body-map.module.css";
import { ShadeKey } from "./shade-key.tsx";
import type { Light } from "./use-light.ts";

interface GroupWordsProps {
  readonly groups: readonly ShadedGroup[];
  readonly light: Light;
  /** Of the hatches. */
  readonly id: string;
}

export const GroupWords = ({ groups, light: { lit, held, point, press }, id }: GroupWordsProps) => (
  <ul className={styles.words} aria-label="Muscles, the most worked first">
    {groups.map(({ group, shade, name, amount }) => (
      <li key={group}>
        <button
          type="button"
          aria-pressed={held === group}
          data-lit={lit === group || undefined}
          onClick={() => press(group)}
          onPointerEnter={() => point(group)}
          onPointerLeave={() => point(null)}
          onFocus={() => point(group)}
          onBlur={() => point(null)}
        >
          <ShadeKey id={id} shade={shade} />
          <span>{name}</span> <span className={styles.amount}>{amount}</span>
        </button>
      </li>
    ))}
  </ul>
);
