"use client";
/** All keys of the plan page on one sheet. */
import { useEffect, useRef } from "react";
import styles from "./dialogs.module.css";

const KEYS: readonly (readonly [string, string])[] = [
  ["↑ ↓", "choose the item before or after"],
  ["Home, End", "choose the first or the last item"],
  ["Alt + ↑ ↓", "move the chosen item up or down the rail"],
  ["+ and −", "one step of the grid longer or shorter"],
  ["Enter", "open the item"],
  ["Escape", "from the item back to the rail; during a drag, leave all as it was"],
  ["A", "add after the chosen item"],
  ["Ctrl or Cmd + D", "duplicate the item"],
  ["Delete", "take the item out; it can be put back"],
  ["Ctrl or Cmd + Z", "undo your own last act, in the script too"],
  ["Ctrl or Cmd + Shift + Z", "redo it"],
  ["?", "this list"],
];

export function KeysHelp({ onClose }: { onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className={styles.dialog} aria-labelledby="keys-title" onClose={onClose}>
      <div className={styles.head}>
        <h2 id="keys-title">Keys</h2>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <dl className={styles.keys}>
        {KEYS.map(([key, what]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <p className="small quiet">
        By hand: pull at an item's lower end to change its time, pull the item along the rail to reorder. With a finger,
        choose the item first, then take the bars at its left or its lower end.
      </p>
    </dialog>
  );
}
