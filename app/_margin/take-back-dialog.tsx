"use client";
/** Asks before a plan is taken back that somebody is reading. */
import { useRef } from "react";
import { LocalTime } from "#app/_parts/local-time.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { TAKE_BACK } from "./hand-words.ts";
import styles from "./margin.module.css";
import { readersNow } from "./readers-now.ts";
import { StateDialog } from "./state-dialog.tsx";

interface TakeBackProps {
  readonly session: PlanSession;
  readonly takeBack: () => Promise<void>;
  readonly onClosed: () => void;
}

export function TakeBackDialog({ session, takeBack, onClosed }: TakeBackProps) {
  const closer = useRef<(() => void) | null>(null);
  const readers = readersNow(useSnapshot(session), session.me.id);
  const go = () => {
    closer.current?.();
    void takeBack();
  };
  return (
    <StateDialog title={TAKE_BACK.title} onClosed={onClosed} closer={closer}>
      {readers.map(({ name, since }) => (
        <p key={name}>
          {since === null ? (
            `${name} has it open.`
          ) : (
            <>
              {name} has been reading it since <LocalTime at={since} />.
            </>
          )}
        </p>
      ))}
      <p>{TAKE_BACK.ends}</p>
      <div className={styles.dialogActs}>
        <button type="button" data-first="" className="button" onClick={() => closer.current?.()}>
          {TAKE_BACK.leave}
        </button>
        <button type="button" className="button button-strong" onClick={go}>
          {TAKE_BACK.act}
        </button>
      </div>
    </StateDialog>
  );
}
