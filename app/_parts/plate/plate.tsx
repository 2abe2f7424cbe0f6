/**
 * A plate away from the rail, in a density of its own: small in a list, or for print. At rest and open it is the rail's
 * (`app/_rail`), made of the same parts.
 */
import type { ReactNode } from "react";
import { clockTime, secondsWords, springWords } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { PlateChange } from "#lib/plan-diff/plate-changes.ts";
import styles from "./plate.module.css";
import type { PlateFacts } from "./plate-facts.ts";
import { PlateWindow } from "./plate-window.tsx";
import { PlateInk, PlateMeta, PlateName, PlateNumbers, PlateSeconds } from "./plate-words.tsx";

interface PlateProps {
  readonly facts: PlateFacts;
  readonly density: "small" | "print";
  readonly figure: ReactNode;
  /** When its work begins, seconds of the class. */
  readonly at?: number | undefined;
  /** Among the moves, where the page refers to moves by number. */
  readonly number?: number | undefined;
  /** The name as the page has it, where that is not the plain name: a heading, a link. */
  readonly name?: ReactNode;
  /** What is different since it was read. */
  readonly change?: PlateChange | undefined;
  /** Beside the numbers. */
  readonly marks?: ReactNode;
  /** Under them. */
  readonly children?: ReactNode;
}

const HEAD_AT_FRONT: ReadonlySet<Move["position"]> = new Set(["plank", "quadruped", "inverted", "side-lying"]);

export function Plate({ facts, density, figure, at, number, name, change, marks, children }: PlateProps) {
  const words = <PlateName name={facts.name} side={facts.side} />;
  return (
    <div
      className={styles.plate}
      data-density={density}
      data-shape={facts.side}
      data-head={facts.move && HEAD_AT_FRONT.has(facts.move.position) ? "front" : undefined}
      data-known={facts.move !== undefined}
    >
      <PlateWindow move={facts.move} figure={figure} number={number} />
      <div className={styles.words}>
        {number !== undefined && <span className="visually-hidden">{number}. </span>}
        {name ?? words}
        <PlateMeta>
          {at !== undefined && <time className={styles.at}>{clockTime(at)}</time>}
          {change?.seconds != null && <Was words={secondsWords(change.seconds)} />}
          <PlateSeconds value={facts.seconds} />
          {change?.springs && <Was words={springWords(facts.equipment, change.springs)} />}
          <PlateNumbers {...facts} reps={density === "print" ? null : facts.reps} />
          {change && <span className={styles.changed}>{changedWords(change)}</span>}
          {marks}
        </PlateMeta>
        {children}
      </div>
      <PlateInk said={facts.said} over={facts.over} />
    </div>
  );
}

/** Struck through for the eye, said for who listens. */
const Was = ({ words }: { readonly words: string }) => (
  <del className={styles.was}>
    <span className="visually-hidden">was </span>
    {words}
  </del>
);

/** What is different and not shown by itself: "changed", "new", "changed: place, words". */
function changedWords({ added, moved, words, other }: PlateChange): string {
  if (added) return "new";
  const what = [moved && "place", words && "words", other && "set-up"].filter(Boolean);
  return what.length === 0 ? "changed" : `changed: ${what.join(", ")}`;
}
