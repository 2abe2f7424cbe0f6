"use client";
/** After the class: how much of the plan it reached, and the way back to the editions. */
import type { Card } from "#lib/card/schema.ts";
import { BACK_TO_EDITIONS } from "../_parts/floor-words.ts";
import type { RunningClass } from "../_parts/use-class.ts";
import styles from "../_ready/ready-screen.module.css";
import { endTitle, endWords } from "./class-words.ts";

interface Props {
  readonly card: Card;
  readonly live: RunningClass;
  /** That logs wait for the studio, in words; "" for none. */
  readonly owed: string;
  onLeave(): void;
}

export function DoneScreen({ card, live, owed, onLeave }: Props) {
  const { view, undoable } = live;
  const whole = view.left < 1;
  return (
    <div className={styles.ready} data-ended>
      <h1 className={styles.title}>{endTitle(whole)}</h1>
      <p className={styles.about}>{endWords(card, whole ? null : view.left)}</p>
      {owed && <p role="status">{owed}</p>}
      <div className={styles.acts}>
        {/* biome-ignore lint/a11y/noAutofocus: the one thing left to do on this screen */}
        <button type="button" className={`button button-strong ${styles.start}`} onClick={onLeave} autoFocus>
          {BACK_TO_EDITIONS}
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
