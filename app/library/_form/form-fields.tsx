"use client";
/** The fields of the form. Each is labelled, shows its own fault, and is found by its place. */
import { type ReactNode, useId } from "react";
import type { MoveFieldPath } from "#lib/library/faults.ts";
import styles from "./form.module.css";

/** The element of a place, for going to it from the list of faults. */
export const fieldId = (place: MoveFieldPath): string => `move-${place}`;

interface Labelled {
  readonly place: MoveFieldPath;
  readonly label: string;
  readonly fault: string | undefined;
  readonly hint?: string | undefined;
}

interface TextProps extends Labelled {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly unit?: string;
  /** A number: phones show their number keys. */
  readonly decimal?: boolean;
  /** A number that may be below 0, which number keys of phones cannot write. */
  readonly signed?: boolean;
  /** Whose value it is, for those who cannot see the row. */
  readonly of?: string;
}

export function TextInput(props: TextProps) {
  const { place, label, fault, hint, value, onChange, unit, decimal = false, signed = false, of } = props;
  const id = fieldId(place);
  return (
    <div className={`field ${styles.field}`}>
      <label htmlFor={id}>
        {label}
        {of ? <span className="visually-hidden"> of {of}</span> : null}
      </label>
      <span className="with-unit">
        <input
          id={id}
          className={decimal || signed ? styles.number : undefined}
          inputMode={decimal ? "decimal" : undefined}
          autoComplete="off"
          value={value}
          aria-invalid={fault !== undefined}
          aria-describedby={describedBy(id, fault, hint)}
          onChange={(event) => onChange(event.target.value)}
        />
        {unit ? <span className="quiet small">{unit}</span> : null}
      </span>
      <Below id={id} fault={fault} hint={hint} />
    </div>
  );
}

interface OptionsProps<T extends string> extends Labelled {
  readonly value: T | "";
  readonly options: readonly (readonly [T, string])[];
  readonly onChange: (value: T | "") => void;
  /** The words for nothing chosen; left out where something has to be chosen. */
  readonly none?: string;
}

export function SelectInput<T extends string>(props: OptionsProps<T>) {
  const { place, label, fault, hint, value, options, onChange, none } = props;
  const id = fieldId(place);
  return (
    <div className={`field ${styles.field}`}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-invalid={fault !== undefined}
        aria-describedby={describedBy(id, fault, hint)}
        onChange={(event) => onChange(options.find(([option]) => option === event.target.value)?.[0] ?? "")}
      >
        {none !== undefined || value === "" ? <option value="">{none ?? "choose"}</option> : null}
        {options.map(([option, words]) => (
          <option key={option} value={option}>
            {words}
          </option>
        ))}
      </select>
      <Below id={id} fault={fault} hint={hint} />
    </div>
  );
}

/** One of a few, side by side. */
export function OneOf<T extends string>({
  place,
  label,
  fault,
  hint,
  value,
  options,
  onChange,
  none,
}: OptionsProps<T>) {
  const id = fieldId(place);
  const name = useId();
  const all: readonly (readonly [T | "", string])[] = none === undefined ? options : [...options, ["", none]];
  return (
    <fieldset className={styles.choice} id={id} tabIndex={-1} aria-describedby={describedBy(id, fault, hint)}>
      <legend>{label}</legend>
      <div className="options">
        {all.map(([option, words]) => (
          <label key={option} data-on={option === value || undefined}>
            <input
              type="radio"
              name={name}
              value={option}
              checked={option === value}
              onChange={() => onChange(option)}
            />
            {words}
          </label>
        ))}
      </div>
      <Below id={id} fault={fault} hint={hint} />
    </fieldset>
  );
}

interface ManyProps<T extends string> {
  readonly place: MoveFieldPath;
  readonly label: string;
  readonly chosen: readonly T[];
  readonly options: readonly (readonly [T, string])[];
  readonly onChange: (chosen: readonly T[]) => void;
}

/** Any of a few. What was chosen keeps its order. */
export function ManyOf<T extends string>({ place, label, chosen, options, onChange }: ManyProps<T>) {
  return (
    <fieldset className={styles.choice} id={fieldId(place)} tabIndex={-1}>
      <legend>{label}</legend>
      <div className={styles.boxes}>
        {options.map(([option, words]) => (
          <label key={option} className="check">
            <input
              type="checkbox"
              checked={chosen.includes(option)}
              onChange={(event) =>
                onChange(event.target.checked ? [...chosen, option] : chosen.filter((other) => other !== option))
              }
            />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface PairProps {
  readonly place: MoveFieldPath;
  readonly legend: string;
  readonly unit: string;
  readonly names: readonly [string, string];
  readonly value: readonly [string, string];
  readonly onChange: (value: readonly [string, string], place: MoveFieldPath) => void;
  faultAt(place: MoveFieldPath): string | undefined;
  readonly hint?: string;
}

/** From and to. A fault of the range as a whole is shown under both. */
export function PairInput({ place, legend, unit, names, value, onChange, faultAt, hint }: PairProps) {
  const id = fieldId(place);
  const fault = faultAt(place);
  return (
    <fieldset className={styles.choice} id={id} tabIndex={-1} aria-describedby={describedBy(id, fault, hint)}>
      <legend>{legend}</legend>
      <div className={styles.pair}>
        {([0, 1] as const).map((end) => (
          <TextInput
            key={end}
            place={`${place}.${end}`}
            label={names[end]}
            unit={unit}
            decimal
            value={value[end]}
            fault={faultAt(`${place}.${end}`)}
            onChange={(typed) => onChange(end === 0 ? [typed, value[1]] : [value[0], typed], `${place}.${end}`)}
          />
        ))}
      </div>
      <Below id={id} fault={fault} hint={hint} />
    </fieldset>
  );
}

export function Below({ id, fault, hint }: { id: string; fault: string | undefined; hint?: ReactNode }) {
  if (fault !== undefined) {
    return (
      <span id={`${id}-fault`} className={styles.fault} role="alert">
        {fault}
      </span>
    );
  }
  return hint ? (
    <span id={`${id}-hint`} className="hint">
      {hint}
    </span>
  ) : null;
}

function describedBy(id: string, fault: string | undefined, hint: ReactNode): string | undefined {
  if (fault !== undefined) return `${id}-fault`;
  return hint ? `${id}-hint` : undefined;
}
