"use client";
/** Asks what to do with a class whose edition was withdrawn. It says who withdrew it and why; nothing stops by itself. */
import { useFormats } from "#app/_parts/formats.tsx";
import type { WithdrawnCard } from "#lib/floor/keep-cards.ts";
import { FitText } from "../_parts/fit-text.tsx";
import type { RunningClass } from "../_parts/use-class.ts";
import { WITHDRAWN_ASKS } from "./class-words.ts";
import styles from "./on-time-sheet.module.css";

interface Props {
  readonly of: WithdrawnCard;
  readonly live: RunningClass;
  /** The coach has decided. */
  onAnswer(): void;
}

/** A reason has up to 200 letters, and a phone on its side has little room: px. */
const SIZES = [34, 30, 26, 23, 20, 18, 16, 15, 14] as const;

export function WithdrawnSheet({ of, live, onAnswer }: Props) {
  const { title, why, goOn, end } = WITHDRAWN_ASKS;
  const f = useFormats();
  const endNow = () => {
    onAnswer();
    live.act("end");
  };
  return (
    <section className={`${styles.sheet} ${styles.asks}`} role="alertdialog" aria-label={title}>
      <FitText className={styles.question} sizes={SIZES} text={why(of, f)}>
        <strong>{title}.</strong> {why(of, f)}
      </FitText>
      <div className={styles.answers}>
        <button type="button" className={styles.take} onClick={onAnswer}>
          {goOn}
        </button>
        <button type="button" onClick={endNow}>
          {end}
        </button>
      </div>
    </section>
  );
}
