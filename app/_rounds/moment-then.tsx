"use client";
/** What was found in a plan at one moment, and how its threads stood; asked for when it is opened. */
import { useState } from "react";
import { FindingList } from "#app/_parts/finding-list.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import type { MomentHead } from "#lib/rounds/rounds.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import type { Then } from "./fetch-rounds.ts";
import styles from "./rounds.module.css";
import { CHANGES, ROUNDS, threadThenWords } from "./rounds-words.ts";
import { usePoint } from "./use-rounds.ts";

export function MomentThen({ session, moment }: { readonly session: PlanSession; readonly moment: MomentHead }) {
  const [open, setOpen] = useState(false);
  const then = usePoint(session, open ? String(moment.id) : null);
  return (
    <details className={styles.then} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{ROUNDS.foundThen}</summary>
      {open && !then && <p role="status">{CHANGES.loading}</p>}
      {then && "problem" in then && <p className="problem">{then.problem}</p>}
      {then && "plan" in then && (
        <>
          <Findings then={then} />
          <Threads session={session} then={then} />
        </>
      )}
    </details>
  );
}

function Findings({ then: { findings } }: { readonly then: Then }) {
  if (findings.length === 0) return <p>{ROUNDS.noFindings}</p>;
  return (["must", "look", "info"] as const).map((level) => {
    const own = findings.filter((finding) => finding.level === level);
    if (own.length === 0) return null;
    return (
      <div key={level}>
        <h4>
          {LEVEL_WORDS[level]}: {own.length}
        </h4>
        <FindingList findings={own} />
      </div>
    );
  });
}

/** Comments are never changed, so the first ones of a thread are those that were there then. */
function Threads({ session, then }: { readonly session: PlanSession; readonly then: Then }) {
  const { threads } = useSnapshot(session);
  if (then.threads.length === 0) return <p>{ROUNDS.noThreads}</p>;
  return (
    <ul className={styles.threads}>
      {then.threads.map(({ id, settled, comments }) => {
        const thread = threads.find((one) => one.id === id);
        return (
          <li key={id}>
            <p className="small quiet">{threadThenWords(settled, comments)}</p>
            {thread?.comments.slice(0, comments).map((comment) => (
              <p key={comment.id} className={styles.comment}>
                <b>{comment.authorName}</b> {comment.body}
              </p>
            )) ?? <p>{ROUNDS.threadGone}</p>}
          </li>
        );
      })}
    </ul>
  );
}
