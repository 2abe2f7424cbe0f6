"use client";
/** One of a few: side by side where they are few, a list where they are many. */
import { useId } from "react";
import styles from "./fields.module.css";

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly disabled?: boolean;
  readonly hint?: string;
  readonly onChoose: (value: T) => void;
}

export function ChoiceField<T extends string>({ label, value, options, disabled, onChoose }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset className={styles.choice} disabled={disabled}>
      <legend>{label}</legend>
      <div className="options">
        {options.map((option) => (
          <label key={option.value} data-value={option.value} data-on={option.value === value || undefined}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChoose(option.value)}
            />
            {option.label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

export function SelectField<T extends string>({ label, value, options, disabled, hint, onChoose }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        disabled={disabled}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value);
          if (chosen) onChoose(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {hint && (
        <span id={`${id}-hint`} className="quiet small">
          {hint}
        </span>
      )}
    </div>
  );
}
