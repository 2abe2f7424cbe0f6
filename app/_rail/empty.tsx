"use client";
/** A rail with nothing on it yet: what to do first. */
import type { PlanSession } from "../_session/session.ts";
import styles from "./empty.module.css";

interface EmptyProps {
  readonly session: PlanSession;
  readonly onAdd: () => void;
  readonly onPaste: () => void;
}

export function Empty({ session, onAdd, onPaste }: EmptyProps) {
  if (!session.canWrite) return <p className={styles.empty}>Nothing hangs on this rail yet.</p>;
  return (
    <div className={styles.empty}>
      <h2>Hang the first move on the rail</h2>
      <p>
        Choose it from the library. Its springs and its time come with it, its usual lines are offered; the clock counts
        along.
      </p>
      <div className="acts">
        <button type="button" className="button button-strong" onClick={onAdd}>
          Add the first move
        </button>
        <button type="button" className="button" onClick={onPaste}>
          Paste a list
        </button>
      </div>
      <p className="small quiet">
        A class that you have as a message, a table or a file can be pasted and checked here.
      </p>
    </div>
  );
}
