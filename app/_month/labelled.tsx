"use client";
/** A field of a class with its label, and the two kinds of it that need more than the browser's own. */
import { type ReactNode, useId, useState } from "react";
import { SLOT_MINUTES } from "#lib/programme/layout.ts";
import { NOT_SHOWN, SLOT_WORDS } from "./month-words.ts";

export function Labelled({
  label,
  children,
}: {
  readonly label: string;
  readonly children: (id: string) => ReactNode;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children(id)}
    </div>
  );
}

interface MinutesFieldProps {
  readonly minutes: number;
  readonly onChange: (minutes: number) => void;
}

/** A half-typed number stays as typed; only one that can be a length is handed on. */
export function MinutesField({ minutes, onChange }: MinutesFieldProps) {
  /** Counts only beside the value over which it was typed: undo and other people change that under the field. */
  const [typed, setTyped] = useState<{ readonly text: string; readonly over: number } | null>(null);
  const write = (text: string) => {
    const value = Number(text);
    const fits = Number.isInteger(value) && value >= SLOT_MINUTES.min && value <= SLOT_MINUTES.max;
    setTyped({ text, over: fits ? value : minutes });
    if (fits) onChange(value);
  };
  return (
    <Labelled label={SLOT_WORDS.minutes}>
      {(id) => (
        <input
          id={id}
          type="number"
          min={SLOT_MINUTES.min}
          max={SLOT_MINUTES.max}
          value={typed?.over === minutes ? typed.text : String(minutes)}
          onBlur={() => setTyped(null)}
          onChange={(event) => write(event.target.value)}
        />
      )}
    </Labelled>
  );
}

interface SlotChoiceProps {
  readonly label: string;
  /** Words for no choice. */
  readonly none: string;
  readonly value: string | null;
  readonly options: readonly (readonly [id: string, words: string])[];
  readonly onChange: (value: string | null) => void;
}

/** A value that is not among the options (a plan one may not read, a person who left) stays, and is named as such. */
export function SlotChoice({ label, none, value, options, onChange }: SlotChoiceProps) {
  const isStrange = value !== null && !options.some(([id]) => id === value);
  return (
    <Labelled label={label}>
      {(id) => (
        <select id={id} value={value ?? ""} onChange={(event) => onChange(event.target.value || null)}>
          <option value="">{none}</option>
          {isStrange && <option value={value}>{NOT_SHOWN}</option>}
          {options.map(([option, words]) => (
            <option key={option} value={option}>
              {words}
            </option>
          ))}
        </select>
      )}
    </Labelled>
  );
}

interface NumberOrNoneProps {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | undefined;
  readonly range: { readonly min: number; readonly max: number };
  readonly onChange: (value: number | null) => void;
}

/** A whole number, or nothing. */
export function NumberOrNone({ label, hint, value, range, onChange }: NumberOrNoneProps) {
  /** What cannot be such a number stays typed, marked by the browser; only a field that was emptied stands for nothing. */
  const write = ({ value: text, validity }: HTMLInputElement) => {
    if (!validity.valid) return;
    const typed = text === "" ? undefined : Number(text);
    if (typed !== value) onChange(typed ?? null);
  };
  return (
    <Labelled label={label}>
      {(id) => (
        <>
          <input
            key={value ?? ""}
            id={id}
            type="number"
            {...range}
            defaultValue={value ?? ""}
            aria-describedby={hint ? `${id}-hint` : undefined}
            onBlur={({ target }) => write(target)}
          />
          {hint && (
            <span className="hint" id={`${id}-hint`}>
              {hint}
            </span>
          )}
        </>
      )}
    </Labelled>
  );
}
