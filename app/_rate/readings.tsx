"use client";
/** The readings of this sitting, each with its numbers and a way to leave it out. */
import { useMemo } from "react";
import { plainNumber } from "#lib/plan/format.ts";
import { ownRate, type RateReading } from "#lib/talk/own-rate.ts";
import styles from "./rate.module.css";
import { readingsWords, readingWords } from "./rate-words.ts";

interface ReadingsProps {
  readonly readings: readonly Extract<RateReading, { ok: true }>[];
  readonly pauseSeconds: number;
  /** They differ so much that another one should settle it. */
  readonly apart: boolean;
  readonly onLeave: (at: number) => void;
}

export function Readings({ readings, pauseSeconds, apart, onLeave }: ReadingsProps) {
  const rate = useMemo(() => ownRate(readings, pauseSeconds), [readings, pauseSeconds]);
  return (
    <section className={styles.readings} aria-labelledby="readings-title">
      <h3 id="readings-title">Your rate: {plainNumber(rate ?? 0)} syllables a second</h3>
      <ul>
        {readings.map((reading, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a reading is known by its turn alone
          <li key={at}>
            <span>{readingWords(reading.seconds, reading.rate, reading.wordsPerMinute)}</span>
            <button type="button" className="button" onClick={() => onLeave(at)}>
              Leave this one out
            </button>
          </li>
        ))}
      </ul>
      <p className="small quiet" role="status">
        {readingsWords(readings.length, pauseSeconds, apart)}
      </p>
    </section>
  );
}
