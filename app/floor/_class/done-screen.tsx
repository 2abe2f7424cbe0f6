"use client";
/** After the class: how it stood against its plan, and the way back to the shelf. */
import type { Card } from "#lib/card/schema.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { RunningClass } from "../_parts/use-class.ts";
import styles from "../_ready/ready-screen.module.css";

interface Props {
  readonly card: Card;
  readonly live: RunningClass;
  /** What the studio does not have yet, in words; "" for nothing. */
  readonly owed: string;
  onLeave(): void;
}

export function DoneScreen({ card, live, owed, onLeave }: Props) {
  const { view, undoable } = live;
  const whole = view.left < 1;
  return (
    <div className={styles.ready}>
      <h1 className={styles.title}>{whole ? "The class is done" : "The class was ended early"}</h1>
      <p className={styles.about}>
        {card.edition.title} · edition {card.edition.number} ·{" "}
        {whole ? `${clockTime(card.clock.total)} of the plan` : `${clockTime(view.left)} of the plan were left`}
      </p>
      {owed && <p role="status">{owed}</p>}
      <div className={styles.acts}>
        {/* biome-ignore lint/a11y/noAutofocus: the one thing left to do on this screen */}
        <button type="button" className={`button button-strong ${styles.start}`} onClick={onLeave} autoFocus>
          Back to the cards
        </button>
        {undoable && (
          <button type="button" className={`button ${styles.start}`} onClick={live.undo}>
            Undo: {undoable.what}
          </button>
        )}
      </div>
    </div>
  );
}
