"use client";
/** Over the rail: who reads the plan, and the note and main points that came with its last step. */
import { LocalTime } from "#app/_parts/local-time.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import type { StateNews } from "#lib/protocol/messages.ts";
import styles from "./margin.module.css";
import { NOTE_WORDS, TAKE_UP } from "./margin-words.ts";

/** The authors work from it. */
export function StateNote({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const words = NOTE_WORDS[state.state];
  const points = state.state === "handed-back" ? (state.round?.mainPoints ?? []) : [];
  const hasNote = words !== undefined && state.note !== null && state.note !== "";
  return (
    <>
      {state.state === "handed-in" && <Reader state={state} me={session.me.id} />}
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

function Reader({ state: { round }, me }: { readonly state: StateNews; readonly me: string }) {
  if (!round?.reader || round.since === null) return <p className={styles.reader}>{TAKE_UP.nobody}</p>;
  const who = round.reader.id === me ? "You are" : `${round.reader.name} is`;
  return (
    <p className={styles.reader} role="status">
      {who} reading it, since <LocalTime at={round.since} />.
    </p>
  );
}
