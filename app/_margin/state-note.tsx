"use client";
/** Over the rail: the note that came with the last step of the plan. */
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import styles from "./margin.module.css";
import { NOTE_WORDS } from "./margin-words.ts";

/** The authors work from it. */
export function StateNote({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const words = NOTE_WORDS[state.state];
  if (words === undefined || state.note === null || state.note === "") return null;
  return (
    <p className={styles.stateNote}>
      <strong>{words}:</strong> {state.note}
    </p>
  );
}
