/**
 * A plate away from the rail, in a density of its own: small in a list, or for print. At rest and open it is the rail's
 * (`app/_rail`), made of the same parts.
 */
import type { ReactNode } from "react";
import { clockTime } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
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
  /** Beside the numbers. */
  readonly marks?: ReactNode;
  /** Under them. */
  readonly children?: ReactNode;
}

const HEAD_AT_FRONT: ReadonlySet<Move["position"]> = new Set(["plank", "quadruped", "inverted", "side-lying"]);

export function Plate({ facts, density, figure, at, number, name, marks, children }: PlateProps) {
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
          <PlateSeconds value={facts.seconds} />
          <PlateNumbers {...facts} reps={density === "print" ? null : facts.reps} />
          {marks}
        </PlateMeta>
        {children}
      </div>
      <PlateInk said={facts.said} over={facts.over} />
    </div>
  );
}
