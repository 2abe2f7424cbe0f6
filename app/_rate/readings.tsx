"use client";
/** The readings of this sitting, each with its numbers and a way to leave it out. */
import { useMemo } from "react";
import { plainNumber, plural } from "#lib/plan/format.ts";
import { ownRate, type RateReading } from "#lib/talk/own-rate.ts";
import styles from "./rate.module.css";

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
          // biome-ignore lint/suspicious/noArrayIndexKey: a reading has no other identity than its turn
          <li key={at}>
            <span>
              {plainNumber(reading.seconds)} s: {plainNumber(reading.rate)} syllables a second,{" "}
              {Math.round(reading.wordsPerMinute)} words a minute
            </span>
            <button type="button" className="button" onClick={() => onLeave(at)}>
              Leave this one out
            </button>
          </li>
        ))}
      </ul>
      <p className="small quiet" role="status">
        {readings.length === 1
          ? "From one reading. Read once more and both count together, so that a slip in one weighs less."
          : `${plural(readings.length, "reading")} taken together: all syllables over all seconds, so that a slip in one weighs less.`}{" "}
        The {plainNumber(pauseSeconds)} s of pause that the plan has after each line are taken off.
        {apart && " These differ by more than a seventh: read once more, or leave out the one that went wrong."}
      </p>
    </section>
  );
}
