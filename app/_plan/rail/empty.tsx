"use client";
/** A rail with nothing on it yet: what to do first. */
import type { PlanSession } from "../session.ts";
import styles from "./empty.module.css";

export function Empty({ session, onAdd }: { session: PlanSession; onAdd: () => void }) {
  if (!session.canWrite) return <p className={styles.empty}>Nothing hangs on this rail yet.</p>;
  return (
    <div className={styles.empty}>
      <h2>Hang the first move on the rail</h2>
      <p>
        Choose it from the library. Its springs and its time come with it, its usual lines are offered; the clock counts
        along.
      </p>
      <button type="button" className="button button-strong" onClick={onAdd}>
        Add the first move
      </button>
    </div>
  );
}
