/** Days of the week to choose from, in the order of the reader's week. */

import { useFormats } from "#app/_parts/formats.tsx";
import { tinyWeekday, weekdaysInOrder } from "#lib/formats/dates.ts";
import styles from "./panel.module.css";

interface WeekdayChoiceProps {
  readonly legend: string;
  readonly days: readonly number[];
  /** Never with no day at all. */
  readonly onChange: (days: readonly number[]) => void;
}

export function WeekdayChoice({ legend, days, onChange }: WeekdayChoiceProps) {
  const f = useFormats();
  const toggle = (day: number) => {
    const next = days.includes(day) ? days.filter((one) => one !== day) : [...days, day].sort();
    if (next.length > 0) onChange(next);
  };
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div className={styles.checks}>
        {weekdaysInOrder(f).map((day) => (
          <label key={day} className="check">
            <input type="checkbox" checked={days.includes(day)} onChange={() => toggle(day)} />
            {tinyWeekday(day, f)}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
