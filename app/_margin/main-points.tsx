"use client";
/** Up to three main points of a return: a field for each, the next one as soon as the one before has words. */
import { useId } from "react";
import { MOST_POINTS, POINT_MAX } from "#lib/rounds/rounds.ts";
import { HAND_BACK } from "./hand-words.ts";
import styles from "./margin.module.css";

interface MainPointsProps {
  readonly points: readonly string[];
  readonly onChange: (points: readonly string[]) => void;
}

export function MainPoints({ points, onChange }: MainPointsProps) {
  const id = useId();
  const shown = Math.min(MOST_POINTS, points.filter((point) => point.trim() !== "").length + 1);
  const fields = Array.from({ length: Math.max(shown, points.length) }, (_, i) => points[i] ?? "");
  const set = (at: number, words: string) => onChange(fields.map((point, i) => (i === at ? words : point)));
  return (
    <fieldset className={styles.mainPoints}>
      <legend>{HAND_BACK.mainPoints}</legend>
      <p className="hint quiet small">{HAND_BACK.mainPointsHint}</p>
      {fields.map((point, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place
        <div className="field" key={i}>
          <label className="visually-hidden" htmlFor={`${id}-${i}`}>
            Main point {i + 1}
          </label>
          <input
            id={`${id}-${i}`}
            value={point}
            maxLength={POINT_MAX}
            placeholder={`${i + 1}.`}
            onChange={(event) => set(i, event.target.value)}
          />
        </div>
      ))}
    </fieldset>
  );
}
