"use client";
/** Cautions to leave out of the list: a button that opens boxes to tick. */
import { useId } from "react";
import { useFold } from "#app/_parts/use-fold.ts";
import { CAUTION_WORDS } from "#lib/library/move-words.ts";
import { plural } from "#lib/plan/format.ts";
import { MOVE_CAUTIONS, type MoveCaution } from "#lib/plan/schema.ts";
import styles from "./library.module.css";

interface LeaveOutProps {
  readonly chosen: readonly MoveCaution[];
  readonly onChange: (chosen: readonly MoveCaution[]) => void;
}

export function LeaveOut({ chosen, onChange }: LeaveOutProps) {
  const id = useId();
  const { open, toggle, box, button } = useFold();
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
        onClick={toggle}
      >
        {words}
      </button>
      <Boxes id={`${id}-boxes`} open={open} chosen={chosen} onChange={onChange} />
    </div>
  );
}

function Boxes({ id, open, chosen, onChange }: LeaveOutProps & { readonly id: string; readonly open: boolean }) {
  const tick = (tag: MoveCaution, on: boolean) =>
    onChange(MOVE_CAUTIONS.filter((other) => (other === tag ? on : chosen.includes(other))));
  return (
    <fieldset id={id} className={styles.boxes} hidden={!open}>
      <legend className="visually-hidden">Leave out moves with</legend>
      {MOVE_CAUTIONS.map((tag) => (
        <label key={tag} className="check">
          <input type="checkbox" checked={chosen.includes(tag)} onChange={(event) => tick(tag, event.target.checked)} />
          {CAUTION_WORDS[tag]}
        </label>
      ))}
    </fieldset>
  );
}
