"use client";
/** Adds to the class after the chosen item: a move from the library (both sides at once where it has sides), a heading, a pause. */
import { useEffect, useRef, useState } from "react";
import styles from "../_parts/dialogs.module.css";
import { MovePicker } from "../_parts/move-picker.tsx";
import { addHeading, addMove, addPair, addPause } from "../_session/acts.ts";
import { nameOf } from "../_session/item-words.ts";
import type { PlanSession } from "../_session/session.ts";

interface AddDialogProps {
  readonly session: PlanSession;
  /** Told whether something was added. */
  readonly onClose: (added: boolean) => void;
}

export function AddDialog({ session, onClose }: AddDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const added = useRef(false);
  const [pairs, setPairs] = useState(true);
  const { plan, selectedId } = session.getSnapshot();
  const after = plan.items.find((item) => item.id === selectedId) ?? plan.items.at(-1);
  const afterId = after?.id ?? null;
  useEffect(() => {
    // The picker asked for the focus before the dialog stood open, and opening gives it to the first button.
    dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>("[role=combobox]")?.focus();
  }, []);

  const add = (act: () => void) => {
    act();
    added.current = true;
    dialog.current?.close();
  };
  const take = (moveId: string) => {
    const sided = session.studio.moves[moveId]?.sides === "each";
    add(() => (sided && pairs ? addPair(session, afterId, moveId) : addMove(session, afterId, moveId)));
  };
  return (
    <dialog ref={dialog} className={styles.dialog} aria-labelledby="add-title" onClose={() => onClose(added.current)}>
      <div className="dialog-head">
        <h2 id="add-title">Add to the class</h2>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <p className="quiet">{after ? `After ${nameOf(plan, after)}.` : "The first of the class."}</p>
      <MovePicker moves={session.studio.moves} archived={session.studio.archived} chosen={null} onTake={take} />
      <label className="check">
        <input type="checkbox" checked={pairs} onChange={(event) => setPairs(event.target.checked)} />
        Add left and right together where a move has sides
      </label>
      <div className="acts">
        <button type="button" className="button" onClick={() => add(() => addHeading(session, afterId))}>
          Add a heading
        </button>
        <button type="button" className="button" onClick={() => add(() => addPause(session, afterId))}>
          Add a pause
        </button>
      </div>
    </dialog>
  );
}
