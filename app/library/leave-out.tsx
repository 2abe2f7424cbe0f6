"use client";
/** Several things that no move in the list may ask of a body. A fold with boxes to tick. */
import { useEffect, useId, useRef, useState } from "react";
import { CAUTION_WORDS } from "#lib/library/move-words.ts";
import { plural } from "#lib/plan/format.ts";
import { MOVE_CAUTIONS, type MoveCaution } from "#lib/plan/schema.ts";
import styles from "./library.module.css";

interface LeaveOutProps {
  readonly chosen: readonly MoveCaution[];
  readonly onChange: (chosen: readonly MoveCaution[]) => void;
}

export function LeaveOut({ chosen, onChange }: LeaveOutProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!open) return;
    const outside = (event: Event) => {
      if (event.target instanceof Node && !box.current?.contains(event.target)) setOpen(false);
    };
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      setOpen(false);
      button.current?.focus();
    };
    document.addEventListener("pointerdown", outside);
    document.addEventListener("focusin", outside);
    document.addEventListener("keydown", onEscape);
    return () => {
      document.removeEventListener("pointerdown", outside);
      document.removeEventListener("focusin", outside);
      document.removeEventListener("keydown", onEscape);
    };
  }, [open]);
  const [first] = chosen;
  const words =
    first === undefined ? "nothing" : chosen.length === 1 ? CAUTION_WORDS[first] : plural(chosen.length, "thing");
  return (
    <div className={`field ${styles.leaveOut}`} ref={box}>
      <span id={`${id}-label`} className="label">
        Leave out
      </span>
      <button
        ref={button}
        id={id}
        type="button"
        className={styles.fold}
        data-on={chosen.length > 0 || undefined}
        aria-expanded={open}
        aria-controls={`${id}-boxes`}
        aria-labelledby={`${id}-label ${id}`}
        onClick={() => setOpen(!open)}
      >
        {words}
      </button>
      <fieldset id={`${id}-boxes`} className={styles.boxes} hidden={!open}>
        <legend className="visually-hidden">Leave out moves with</legend>
        {MOVE_CAUTIONS.map((tag) => (
          <label key={tag} className="check">
            <input
              type="checkbox"
              checked={chosen.includes(tag)}
              onChange={(event) =>
                onChange(
                  MOVE_CAUTIONS.filter((other) => (other === tag ? event.target.checked : chosen.includes(other))),
                )
              }
            />
            {CAUTION_WORDS[tag]}
          </label>
        ))}
      </fieldset>
    </div>
  );
}
