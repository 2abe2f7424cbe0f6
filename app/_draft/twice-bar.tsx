"use client";
/** Over the rail, while lines stand twice in a script: how many, and one press that takes one of each out. */
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { takeTwiceOut } from "#lib/draft/twice.ts";
import styles from "./draft.module.css";
import { twiceWords } from "./draft-words.ts";

/** One or two may be meant. */
const LEAST = 3;

export function TwiceBar({ session, snap }: { readonly session: PlanSession; readonly snap: SessionSnapshot }) {
  const fix = session.canWrite ? takeTwiceOut(snap.plan) : null;
  if (fix === null || fix.changes.length < LEAST) return null;
  return (
    <section className={styles.bar} aria-label="Lines that stand twice">
      <p>
        <b>{twiceWords(fix.changes.length)}</b> Somebody took the same lines at the same moment.
      </p>
      <span className={styles.acts}>
        <button type="button" className="button" onClick={() => takeFix(session, fix)}>
          {fix.label}
        </button>
      </span>
    </section>
  );
}
