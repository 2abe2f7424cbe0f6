"use client";
/** How many of each spring are on, set by hand and taken with one button. */
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
      {equipment.springs.map((spring) => (
        <SpringCount
          key={spring.id}
          spring={spring}
          equipment={equipment}
          on={Math.min(counts[spring.id] ?? 0, spring.count)}
          onSet={(n) => setCounts({ ...counts, [spring.id]: n })}
        />
      ))}
      <button type="button" className="button" onClick={() => onTake(held(counts, equipment))}>
        Take {springWords(equipment, held(counts, equipment))}
      </button>
    </div>
  );
}

interface SpringCountProps {
  readonly spring: Equipment["springs"][number];
  readonly equipment: Equipment;
  readonly on: number;
  readonly onSet: (n: number) => void;
}

function SpringCount({ spring, equipment, on, onSet }: SpringCountProps) {
  return (
    <div className={styles.count}>
      <span className={styles.countName}>
        <CoilMark weight={coilWeight(spring, equipment.springs)} />
        {spring.label}
      </span>
      <button
        type="button"
        className="button"
        aria-label={`One ${spring.label} less`}
        disabled={on === 0}
        onClick={() => onSet(on - 1)}
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
        onClick={() => onSet(on + 1)}
      >
        +
      </button>
    </div>
  );
}

/** Only springs that the room has, and no more of each than it has. */
const held = (counts: Counts, { springs }: Equipment): Counts =>
  Object.fromEntries(
    springs.flatMap(({ id, count }) => ((counts[id] ?? 0) > 0 ? [[id, Math.min(counts[id] ?? 0, count)]] : [])),
  );
