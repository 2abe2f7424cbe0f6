"use client";
/** One plain value of words, written when the field is left or Enter is pressed. */
import { useId } from "react";
import styles from "./fields.module.css";
import { useDraft } from "./use-draft.ts";

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly maxLength: number;
  readonly disabled: boolean;
  readonly onCommit: (value: string) => void;
}

export function TextField({ label, value, maxLength, disabled, onCommit }: TextFieldProps) {
  const id = useId();
  const draft = useDraft(value);
  const commit = () => {
    if (draft.take()) onCommit(draft.text.trim());
  };
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={draft.text}
        {...draft.mark}
        aria-describedby={draft.meanwhile ? `${id}-hint` : undefined}
        maxLength={maxLength}
        disabled={disabled}
        onChange={(event) => draft.write(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (!draft.letsGo(event) && event.key === "Enter") commit();
        }}
      />
      {draft.meanwhile && (
        <span id={`${id}-hint`} className={styles.hint} role="status">
          {draft.meanwhile}
        </span>
      )}
    </div>
  );
}
