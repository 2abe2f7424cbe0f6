"use client";
/** How hard the class is by its METs: the arc over time, minutes of each level, energy for a mass that is not kept. */
import { useId, useMemo, useState } from "react";
import { type ClassIntensity, classIntensity, energyKcal, type IntensityLevel } from "#lib/intensity/intensity.ts";
import { clockTime, plainNumber, plural } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { NumberField } from "../_parts/number-field.tsx";
import { IntensityArc } from "./intensity-arc.tsx";
import styles from "./load.module.css";

export function IntensityPart({ plan }: { plan: Plan }) {
  const intensity = useMemo(() => classIntensity(plan), [plan]);
  const title = useId();
  if (!intensity.arc.some((part) => part.work)) return null;
  return (
    <section className={styles.intensity} aria-labelledby={title}>
      <h3 id={title}>Intensity</h3>
      <IntensityArc intensity={intensity} />
      <Levels intensity={intensity} />
      <Energy metMinutes={intensity.metMinutes} />
      <p className="quiet small">
        METs are averages of groups, not a reading of one person, and no published one exists for work on a sliding
        carriage with springs: the studio judged which fits each move. Where nothing is done 1 MET is counted. Strength
        work feels harder than its MET says. Energy: MET × 3.5 × kg ÷ 200 kcal a minute.
      </p>
    </section>
  );
}

const LEVEL_WORDS: Readonly<Record<IntensityLevel, string>> = {
  vigorous: "vigorous, from 6 MET",
  moderate: "moderate, 3 to 6 MET",
  light: "light, 2 to 3 MET",
  "very-light": "very light, under 2 MET",
  rest: "opening, changes, pauses, closing",
};
const SHOWN: readonly IntensityLevel[] = ["vigorous", "moderate", "light", "very-light", "rest"];

function Levels({ intensity }: { intensity: ClassIntensity }) {
  const { seconds, unknown } = intensity;
  const rows = SHOWN.filter((level) => seconds[level] > 0).map((level) => ({
    word: LEVEL_WORDS[level],
    seconds: seconds[level],
  }));
  return (
    <dl className={styles.levels}>
      {rows.map((row) => (
        <div key={row.word}>
          <dt>{row.word}</dt>
          <dd>{clockTime(row.seconds)}</dd>
        </div>
      ))}
      <div>
        <dt>MET-minutes in all</dt>
        <dd>{plainNumber(intensity.metMinutes)}</dd>
      </div>
      {unknown.seconds > 0 && (
        <div>
          <dt>{`not known, ${plural(unknown.items.length, "item")}: counted nowhere`}</dt>
          <dd>{clockTime(unknown.seconds)}</dd>
        </div>
      )}
    </dl>
  );
}

/** The mass stays in this field: it is neither written into the plan nor sent anywhere. */
function Energy({ metMinutes }: { metMinutes: number }) {
  const [kg, setKg] = useState<number | undefined>();
  const kcal = kg === undefined ? null : energyKcal({ met: metMinutes, kg, minutes: 1 });
  return (
    <div className={styles.energy}>
      <NumberField
        label="Energy for a person of"
        unit="kg"
        value={kg}
        min={20}
        max={300}
        optional
        hint="Not kept anywhere."
        onCommit={setKg}
      />
      <p aria-live="polite">{kcal !== null && <b>{`about ${Math.round(kcal)} kcal`}</b>}</p>
    </div>
  );
}
