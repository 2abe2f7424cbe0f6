/**
 * Springs drawn as coils: as many as are on, the line as thick as the spring is stiff beside the others on this
 * machine. Never a colour. Read aloud as "two light".
 */
import { springWords } from "#lib/plan/format.ts";
import { type Equipment, MOST_OF_A_SPRING } from "#lib/plan/schema.ts";
import styles from "./coil.module.css";
import { coilWeight } from "./coil-weight.ts";

/** One coil. Decoration: the words are beside it or in the label of its control. */
export function CoilMark({ weight, off = false }: { weight: number; off?: boolean }) {
  return (
    <svg
      className={styles.coil}
      width="26"
      height="16"
      viewBox="0 0 26 16"
      aria-hidden="true"
      strokeWidth={weight}
      strokeDasharray={off ? "2 2.5" : undefined}
      opacity={off ? 0.55 : undefined}
    >
      <path d="M1 10 H4 C5.5 10 5.5 3 7.2 3 S8.8 13 10.4 13 S12 3 13.6 3 S15.2 13 16.8 13 S18.4 3 20 3 S21 10 22.4 10 H25" />
    </svg>
  );
}

/** How many are drawn: a document may hold any number, written past the page. */
export const drawnSprings = (n: number): number => Math.min(MOST_OF_A_SPRING, Math.max(0, Math.ceil(n)));

/** All springs of an item. */
export function Coils(props: { springs: Readonly<Record<string, number>>; equipment: Equipment; words?: boolean }) {
  const { springs, equipment, words = false } = props;
  const text = springWords(equipment, springs);
  const on = equipment.springs.flatMap((spring) =>
    Array.from({ length: drawnSprings(springs[spring.id] ?? 0) }, (_, i) => ({ key: `${spring.id}${i}`, spring })),
  );
  return (
    <span className={styles.coils}>
      {on.map(({ key, spring }) => (
        <CoilMark key={key} weight={coilWeight(spring, equipment.springs)} />
      ))}
      <span className={words || on.length === 0 ? styles.words : "visually-hidden"}>{text}</span>
    </span>
  );
}
