"use client";
/** Over the rail: who reads the plan, and the note and main points that came with its last step. */
import { LocalTime } from "#app/_parts/local-time.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import styles from "./margin.module.css";
import { NOTE_WORDS, TAKE_UP } from "./margin-words.ts";
import { TakeUp } from "./take-up.tsx";

/** The authors work from it. */
export function StateNote({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const words = NOTE_WORDS[state.state];
  const points = state.state === "handed-back" ? (state.round?.mainPoints ?? []) : [];
  const hasNote = words !== undefined && state.note !== null && state.note !== "";
  return (
    <>
      {state.state === "handed-in" && <Reader session={session} />}
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

/** Leads share what is offered: who reads it is said to all, and a lead takes it up here. */
function Reader({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const { reader, since } = state.round ?? {};
  const who = reader?.id === session.me.id ? "You are" : `${reader?.name} is`;
  return (
    <div className={styles.reader}>
      <p role="status">
        {reader && since != null ? (
          <>
            {who} reading it, since <LocalTime at={since} />.
          </>
        ) : (
          TAKE_UP.nobody
        )}
      </p>
      {session.me.roles.includes("lead") && <TakeUp session={session} />}
    </div>
  );
}
