"use client";
/** What a class may begin with, one move a kind of work, drawn: a press puts it in. */
import { SmallFigure } from "#app/_parts/late-figure.tsx";
import { tintOf } from "#app/_parts/plate/tint.ts";
import { addMoveItem, addMovePair } from "#app/_session/acts.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./empty.module.css";

/** Legs come first: the common order of a class, no source. */
const KINDS = ["legs", "pull", "push", "trunk"] as const;

export function FirstMoves({ session }: { readonly session: PlanSession }) {
  const lastId = session.getSnapshot().plan.items.at(-1)?.id ?? null;
  const add = (id: string, move: Move) => (move.sides === "each" ? addMovePair : addMoveItem)(session, lastId, id);
  return (
    <ul className={styles.first} aria-label="Moves to begin with">
      {firstMoves(session).map(([id, move]) => (
        <li key={id}>
          <button type="button" onClick={() => add(id, move)}>
            <SmallFigure move={move} />
            <span>{move.name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The least demanding move of each kind: the one with the fewest cautions, then by name. */
function firstMoves({ studio }: PlanSession): (readonly [string, Move])[] {
  const offered = Object.entries(studio.moves).filter(([id]) => !studio.archived?.includes(id));
  const easiest = offered.toSorted(
    ([, a], [, b]) => (a.cautions?.length ?? 0) - (b.cautions?.length ?? 0) || a.name.localeCompare(b.name, "en"),
  );
  return KINDS.flatMap((kind) => {
    const found = easiest.find(([, move]) => tintOf(move) === kind);
    return found ? [found] : [];
  });
}
