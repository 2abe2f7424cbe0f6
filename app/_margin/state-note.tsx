"use client";
/** Over the rail: who reads the plan, and the note and main points that came with its last step. */
import { LatePart } from "#app/_parts/late-part.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { lateReader } from "./late-review.ts";
import styles from "./margin.module.css";
import { NOTE_WORDS } from "./margin-words.ts";

/** The authors work from it. */
export function StateNote({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const words = NOTE_WORDS[state.state];
  const points = state.state === "handed-back" ? (state.round?.mainPoints ?? []) : [];
  const hasNote = words !== undefined && state.note !== null && state.note !== "";
  return (
    <>
      {state.state === "handed-in" && (
        <div className={styles.reader}>
          <LatePart part={lateReader} props={{ session }} meanwhile={null} />
        </div>
      )}
      {(hasNote || points.length > 0) && (
        <div className={styles.stateNote}>
          {points.length > 0 && (
            <ol aria-label="Main points">
              {points.map((point) => (
                <li key={point}>{point}</li>
              ))}
            </ol>
          )}
          {hasNote && (
            <p>
              <strong>{words}:</strong> {state.note}
            </p>
          )}
        </div>
      )}
    </>
  );
}
