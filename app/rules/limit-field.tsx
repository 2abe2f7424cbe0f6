"use client";
/** One limit of a rule, typed as its schema defines it: a number with its unit, a list to choose from, yes or no. */
import { useId } from "react";
import { sameData } from "#lib/plan/same-data.ts";
import {
  type ChoicesLimit,
  type Limit,
  type LimitUnits,
  limitBounds,
  limitUnit,
  limitWords,
  type NumberLimit,
  optionWords,
  type WordsLimit,
} from "#lib/rules/limits.ts";
import styles from "./rules.module.css";
import { type DraftValue, usualValue } from "./standard-draft.ts";

interface LimitFieldProps {
  readonly limit: Limit;
  /** Undefined for a limit that no field can hold. */
  readonly value: DraftValue | undefined;
  /** Those that the draft is typed in. */
  readonly units: LimitUnits;
  /** One sentence about what was typed. */
  readonly problem: string | undefined;
  readonly onChange: (value: DraftValue) => void;
}

export function LimitField({ limit, value, units, problem, onChange }: LimitFieldProps) {
  const usual = usualValue(limit, units);
  return (
    <div className={styles.limit}>
      <Typed limit={limit} value={value} units={units} problem={problem} onChange={onChange} />
      {usual !== null && !sameData(value, usual) && (
        <button type="button" className="text-button small" onClick={() => onChange(usual)}>
          Back to the usual: {limitWords(limit, limit.usual, units)}
          <span className="visually-hidden"> ({limit.label})</span>
        </button>
      )}
    </div>
  );
}

function Typed({ limit, value, units, problem, onChange }: LimitFieldProps) {
  if (limit.kind === "number" && typeof value === "string") {
    return <NumberField limit={limit} text={value} units={units} problem={problem} onChange={onChange} />;
  }
  if (limit.kind === "words" && typeof value === "string") {
    return <WordsField limit={limit} text={value} problem={problem} onChange={onChange} />;
  }
  if (limit.kind === "choices" && Array.isArray(value)) {
    return <Choices limit={limit} chosen={value} onChange={onChange} />;
  }
  if (limit.kind === "yes-no") {
    return (
      <label className="check">
        <input type="checkbox" checked={value === true} onChange={(event) => onChange(event.target.checked)} />
        {limit.label}
      </label>
    );
  }
  return (
    <p>
      {limit.label}: {limitWords(limit, limit.usual, units)}
    </p>
  );
}

interface NumberProps {
  readonly limit: NumberLimit;
  readonly text: string;
  readonly units: LimitUnits;
  readonly problem: string | undefined;
  readonly onChange: (value: string) => void;
}

function NumberField({ limit, text, units, problem, onChange }: NumberProps) {
  const id = useId();
  const unit = limitUnit(limit, units);
  const usual = limit.usual === null ? "" : `; usually ${limitWords(limit, limit.usual, units)}`;
  return (
    <div className="field">
      <label htmlFor={id}>{limit.label}</label>
      <span className="with-unit with-unit-number">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={problem !== undefined}
          aria-describedby={`${id}-say`}
          onChange={(event) => onChange(event.target.value)}
        />
        {unit && <span>{unit}</span>}
      </span>
      <span id={`${id}-say`} className={problem === undefined ? "hint" : "problem"} role={problem && "alert"}>
        {problem ?? `${limitBounds(limit, units)}${usual}`}
      </span>
    </div>
  );
}

interface WordsProps {
  readonly limit: WordsLimit;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onChange: (value: string) => void;
}

function WordsField({ limit, text, problem, onChange }: WordsProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{limit.label}</label>
      <textarea
        id={id}
        rows={2}
        value={text}
        aria-invalid={problem !== undefined}
        aria-describedby={`${id}-say`}
        onChange={(event) => onChange(event.target.value)}
      />
      <span id={`${id}-say`} className={problem === undefined ? "hint" : "problem"} role={problem && "alert"}>
        {problem ?? "For example kneeling: bolster, block; overhead: ceiling. A star stands for any ending."}
      </span>
    </div>
  );
}

interface ChoicesProps {
  readonly limit: ChoicesLimit;
  readonly chosen: readonly string[];
  readonly onChange: (value: readonly string[]) => void;
}

function Choices({ limit, chosen, onChange }: ChoicesProps) {
  const toggle = (option: string, on: boolean) =>
    onChange(limit.options.filter((other) => (other === option ? on : chosen.includes(other))));
  return (
    <fieldset className={styles.choices}>
      <legend>{limit.label}</legend>
      {limit.options.map((option) => (
        <label key={option} className="check">
          <input
            type="checkbox"
            checked={chosen.includes(option)}
            onChange={(event) => toggle(option, event.target.checked)}
          />
          {optionWords(option)}
        </label>
      ))}
    </fieldset>
  );
}
