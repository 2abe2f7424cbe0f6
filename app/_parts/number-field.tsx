"use client";
/** A number or a time typed by hand: written when the field is left or Enter is pressed, never letter by letter. */
import { type KeyboardEvent, useId, useState } from "react";
import { clockTime, plainNumber } from "#lib/plan/format.ts";
import styles from "./fields.module.css";
import { useDraft } from "./use-draft.ts";

interface NumberFieldProps {
  readonly label: string;
  readonly value: number | undefined;
  readonly onCommit: (value: number | undefined) => void;
  readonly disabled?: boolean;
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  /** May be left empty, which means what the hint says. */
  readonly optional?: boolean;
  readonly placeholder?: string;
  readonly hint?: string;
  /** Shown and read as minutes and seconds; a bare number is minutes. */
  readonly clock?: boolean;
  /** How a number is shown; left out: with at most one decimal. */
  readonly show?: (value: number) => string;
}

/** "25:30" is 1530, "25" is 25 minutes; undefined when it is neither. */
function parseClock(text: string): number | undefined {
  const match = /^(\d{1,3})(?::([0-5]?\d))?$/.exec(text.trim());
  return match ? Number(match[1]) * 60 + Number(match[2] ?? 0) : undefined;
}

export function NumberField(props: NumberFieldProps) {
  const { label, clock = false, disabled = false, unit } = props;
  const id = useId();
  const { draft, problem, commit, onKeyDown } = useNumber(props);
  const help = draft.meanwhile ?? props.hint;
  const describedBy = problem ? `${id}-problem` : help ? `${id}-hint` : undefined;
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <span className="with-unit">
        <input
          id={id}
          className={styles.number}
          inputMode={clock ? "text" : "decimal"}
          value={draft.text}
          {...draft.mark}
          disabled={disabled}
          placeholder={props.placeholder}
          aria-invalid={problem !== null}
          aria-describedby={describedBy}
          onChange={(event) => draft.write(event.target.value)}
          onBlur={commit}
          onKeyDown={onKeyDown}
        />
        {unit && <span className="quiet small">{unit}</span>}
      </span>
      <Below id={id} problem={problem} help={help} isNews={draft.meanwhile !== null} />
    </div>
  );
}

function useNumber(props: NumberFieldProps) {
  const { value, clock = false, show = plainNumber } = props;
  const draft = useDraft(value === undefined ? "" : clock ? clockTime(value) : show(value));
  const [problem, setProblem] = useState<string | null>(null);
  const commit = () => {
    if (!draft.isOpen) return;
    const read = readNumber(draft.text, props);
    setProblem("problem" in read ? read.problem : null);
    if ("problem" in read) return;
    if (draft.take()) props.onCommit(read.value);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (draft.letsGo(event)) setProblem(null);
    if (event.key === "Enter") commit();
    if (event.key === "Escape" && draft.isOpen) {
      event.stopPropagation();
      draft.drop();
      setProblem(null);
    }
  };
  return { draft, problem, commit, onKeyDown };
}

interface BelowProps {
  readonly id: string;
  readonly problem: string | null;
  readonly help: string | undefined;
  /** Somebody else has set the value: read aloud. */
  readonly isNews: boolean;
}

function Below({ id, problem, help, isNews }: BelowProps) {
  if (problem) {
    return (
      <span id={`${id}-problem`} className="must small" role="alert">
        {problem}
      </span>
    );
  }
  return help ? (
    <span id={`${id}-hint`} className="quiet small" role={isNews ? "status" : undefined}>
      {help}
    </span>
  ) : null;
}

type Read = { readonly value: number | undefined } | { readonly problem: string };

function readNumber(
  draft: string,
  { clock, min = 0, max = 14400, optional, show = plainNumber }: NumberFieldProps,
): Read {
  const text = draft.trim().replace(",", ".");
  if (text === "") return optional ? { value: undefined } : { problem: "Type a number." };
  const value = clock ? parseClock(text) : Number(text);
  if (value === undefined || !Number.isFinite(value)) {
    return { problem: clock ? "Type minutes and seconds, like 25:00." : "Type a number, like 12 or 2.5." };
  }
  const say = (n: number) => (clock ? clockTime(n) : show(n));
  if (value < min || value > max) return { problem: `Type a value from ${say(min)} to ${say(max)}.` };
  return { value };
}
