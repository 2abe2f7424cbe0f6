"use client";
/** How many of each spring are on, to set by hand; taken when the button says so. */
import { useState } from "react";
import { CoilMark } from "#app/_parts/coils/coil.tsx";
import { coilWeight } from "#app/_parts/coils/coil-weight.ts";
import { countWord, springWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import styles from "./paste.module.css";

type Counts = Readonly<Record<string, number>>;

interface SpringCountsProps {
  readonly equipment: Equipment;
  readonly start: Counts;
  readonly onTake: (springs: Counts) => void;
}

export function SpringCounts({ equipment, start, onTake }: SpringCountsProps) {
  const [counts, setCounts] = useState<Counts>(start);
  return (
    <div className={styles.counts}>
      {equipment.springs.map((spring) => {
        const on = Math.min(counts[spring.id] ?? 0, spring.count);
        const set = (n: number) => setCounts({ ...counts, [spring.id]: n });
        return (
          <div key={spring.id} className={styles.count}>
            <span className={styles.countName}>
              <CoilMark weight={coilWeight(spring, equipment.springs)} />
              {spring.label}
            </span>
            <button
              type="button"
              className="button"
              aria-label={`One ${spring.label} less`}
              disabled={on === 0}
              onClick={() => set(on - 1)}
            >
              −
            </button>
            <span className={styles.countOn} aria-live="polite">
              {on === 0 ? "none" : countWord(on)} of {spring.count}
            </span>
            <button
              type="button"
              className="button"
              aria-label={`One ${spring.label} more`}
              disabled={on >= spring.count}
              onClick={() => set(on + 1)}
            >
              +
            </button>
          </div>
        );
      })}
      <button type="button" className="button" onClick={() => onTake(held(counts, equipment))}>
        Take {springWords(equipment, held(counts, equipment))}
      </button>
    </div>
  );
}

/** No more than the room has, and only its own. */
const held = (counts: Counts, { springs }: Equipment): Counts =>
  Object.fromEntries(
    springs.flatMap(({ id, count }) => ((counts[id] ?? 0) > 0 ? [[id, Math.min(counts[id] ?? 0, count)]] : [])),
  );
