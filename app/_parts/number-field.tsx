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
}

/** "25:30" is 1530, "25" is 25 minutes; undefined when it is neither. */
export function parseClock(text: string): number | undefined {
  const match = /^(\d{1,3})(?::([0-5]?\d))?$/.exec(text.trim());
  return match ? Number(match[1]) * 60 + Number(match[2] ?? 0) : undefined;
}

export function NumberField(props: NumberFieldProps) {
  const { label, value, clock = false, disabled = false, unit, hint } = props;
  const id = useId();
  const shown = value === undefined ? "" : clock ? clockTime(value) : plainNumber(value);
  const draft = useDraft(shown);
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
  const help = draft.meanwhile ?? hint;
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
      {problem ? (
        <span id={`${id}-problem`} className="must small" role="alert">
          {problem}
        </span>
      ) : (
        help && (
          <span id={`${id}-hint`} className="quiet small" role={draft.meanwhile ? "status" : undefined}>
            {help}
          </span>
        )
      )}
    </div>
  );
}

type Read = { readonly value: number | undefined } | { readonly problem: string };

function readNumber(draft: string, { clock, min = 0, max = 14400, optional }: NumberFieldProps): Read {
  const text = draft.trim().replace(",", ".");
  if (text === "") return optional ? { value: undefined } : { problem: "Give a number." };
  const value = clock ? parseClock(text) : Number(text);
  if (value === undefined || !Number.isFinite(value)) {
    return { problem: clock ? "Write minutes and seconds, like 25:00." : "This is not a number." };
  }
  const say = (n: number) => (clock ? clockTime(n) : plainNumber(n));
  if (value < min || value > max) return { problem: `From ${say(min)} to ${say(max)}.` };
  return { value };
}
