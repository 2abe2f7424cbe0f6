"use client";
/** One plain value of words, written when the field is left or Enter is pressed. */
import { useEffect, useId, useState } from "react";
import styles from "./fields.module.css";

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly maxLength: number;
  readonly disabled: boolean;
  readonly onCommit: (value: string) => void;
}

export function TextField({ label, value, maxLength, disabled, onCommit }: TextFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState(value);
  useEffect(() => setDraft(value), [value]);
  const commit = () => {
    if (draft.trim() !== value) onCommit(draft.trim());
  };
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={draft}
        maxLength={maxLength}
        disabled={disabled}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => event.key === "Enter" && commit()}
      />
    </div>
  );
}
