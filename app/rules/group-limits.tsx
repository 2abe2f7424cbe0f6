"use client";
/** One limit said for single muscle groups: a number each, or empty for the general one. */
import { useId } from "react";
import { tagWords } from "#lib/plan/format.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import styles from "./rules.module.css";

interface GroupLimitsProps {
  readonly limit: string;
  readonly label: string;
  readonly texts: Readonly<Record<string, string>>;
  /** By "limit/group". */
  readonly problems: Readonly<Record<string, string>>;
  readonly onChange: (texts: Readonly<Record<string, string>>) => void;
}

export function GroupLimits({ limit, label, texts, problems, onChange }: GroupLimitsProps) {
  return (
    <details className={styles.byGroup}>
      <summary>{label}</summary>
      {GROUPS.map((group) => (
        <GroupField
          key={group}
          name={tagWords(group)}
          text={texts[group] ?? ""}
          problem={problems[`${limit}/${group}`]}
          onChange={(text) => onChange({ ...texts, [group]: text })}
        />
      ))}
    </details>
  );
}

interface GroupFieldProps {
  readonly name: string;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onChange: (text: string) => void;
}

function GroupField({ name, text, problem, onChange }: GroupFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={text}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-say`}
        onChange={(event) => onChange(event.target.value)}
      />
      {problem !== undefined && (
        <span id={`${id}-say`} className="problem" role="alert">
          {problem}
        </span>
      )}
    </div>
  );
}
