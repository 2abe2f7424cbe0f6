/** Days of the week to choose from, Monday first. */
import styles from "./panel.module.css";

const NAMES = ["Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"];

interface WeekdayChoiceProps {
  readonly legend: string;
  readonly days: readonly number[];
  /** Never with no day at all. */
  readonly onChange: (days: readonly number[]) => void;
}

export function WeekdayChoice({ legend, days, onChange }: WeekdayChoiceProps) {
  const toggle = (day: number) => {
    const next = days.includes(day) ? days.filter((one) => one !== day) : [...days, day].sort();
    if (next.length > 0) onChange(next);
  };
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div className={styles.checks}>
        {NAMES.map((name, i) => (
          <label key={name} className="check">
            <input type="checkbox" checked={days.includes(i + 1)} onChange={() => toggle(i + 1)} />
            {name}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
