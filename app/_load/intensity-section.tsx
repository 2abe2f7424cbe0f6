"use client";
/** How hard the class is by its METs: the arc over time, minutes of each level, energy for a body mass. */
import { useId, useMemo, useState } from "react";
import { type ClassIntensity, classIntensity, energyKcal, type IntensityLevel } from "#lib/intensity/intensity.ts";
import { clockTime, plainNumber } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { NumberField } from "../_parts/number-field.tsx";
import { IntensityArc } from "./intensity-arc.tsx";
import styles from "./load.module.css";
import { INTENSITY_WORDS, METS_NOTE, withoutMet } from "./load-words.ts";

export function IntensitySection({ plan }: { plan: Plan }) {
  const intensity = useMemo(() => classIntensity(plan), [plan]);
  const title = useId();
  if (!intensity.arc.some((part) => part.work)) return null;
  return (
    <section className={styles.intensity} aria-labelledby={title}>
      <h3 id={title}>Intensity</h3>
      <IntensityArc intensity={intensity} />
      <Levels intensity={intensity} />
      <Energy metMinutes={intensity.metMinutes} />
      <p className="quiet small">{METS_NOTE}</p>
    </section>
  );
}

const SHOWN: readonly IntensityLevel[] = ["vigorous", "moderate", "light", "very-light", "rest"];

function Levels({ intensity }: { intensity: ClassIntensity }) {
  const { seconds, unknown } = intensity;
  const rows = SHOWN.filter((level) => seconds[level] > 0).map((level) => ({
    word: INTENSITY_WORDS[level],
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
        <dt>MET-minutes in total</dt>
        <dd>{plainNumber(intensity.metMinutes)}</dd>
      </div>
      {unknown.seconds > 0 && (
        <div>
          <dt>{withoutMet(unknown.items.length)}</dt>
          <dd>{clockTime(unknown.seconds)}</dd>
        </div>
      )}
    </dl>
  );
}

/** The body mass stays in this field. It is neither written into the plan nor sent anywhere. */
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
        hint="Not saved anywhere."
        onCommit={setKg}
      />
      <p aria-live="polite">{kcal !== null && <b>{`about ${Math.round(kcal)} kcal`}</b>}</p>
    </div>
  );
}
