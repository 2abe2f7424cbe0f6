"use client";
/** A rail with nothing on it yet: what to do first. */
import { PlanButton, usePageActs } from "../_session/page-acts.tsx";
import styles from "./empty.module.css";
import { FirstMoves } from "./first-moves.tsx";

export function Empty() {
  const { session } = usePageActs();
  if (!session.canWrite) return <p className={styles.empty}>There is no move in this plan yet.</p>;
  return (
    <div className={styles.empty}>
      <h2>Add the first move</h2>
      <p>
        Choose it from the library. It brings its springs and its time, and its usual lines are offered for the script.
        The clock shows at once how long the class is.
      </p>
      <div className="acts">
        <PlanButton command="add" className="button-strong">
          Add the first move
        </PlanButton>
        <PlanButton command="paste" />
      </div>
      <p>Or begin with one of these:</p>
      <FirstMoves session={session} />
      <p className="small quiet">If you have the class as a message, a table or a file, paste it and check it here.</p>
    </div>
  );
}
