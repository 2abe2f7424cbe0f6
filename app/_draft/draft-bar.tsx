"use client";
/** Over the rail, while anything is proposed: how much, and one press that takes or leaves all of it. */
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { takeDraft } from "#lib/draft/first-draft.ts";
import styles from "./draft.module.css";
import { DRAFT_NOTE, LEAVE_ALL, LEFT_SAID, proposedWords, TAKE_ALL } from "./draft-words.ts";
import { leaveLines, leftKey } from "./left-lines.ts";
import { useFirstDraft } from "./use-first-draft.ts";

export function DraftBar({ session, snap }: { readonly session: PlanSession; readonly snap: SessionSnapshot }) {
  const draft = useFirstDraft(session, snap);
  if (draft.size === 0) return null;
  const lines = [...draft].flatMap(([id, some]) => some.map(({ line }) => leftKey(id, line)));
  const leaveAll = () => {
    leaveLines(session.planId, lines);
    session.say(LEFT_SAID);
  };
  return (
    <section className={styles.bar} aria-label="First draft">
      <p>
        <b>{proposedWords(lines.length, draft.size)}</b> {DRAFT_NOTE}
      </p>
      <span className={styles.acts}>
        <button type="button" className="button" onClick={() => takeFix(session, takeDraft(draft, [...draft.keys()]))}>
          {TAKE_ALL}
        </button>
        <button type="button" className="act" onClick={leaveAll}>
          {LEAVE_ALL}
        </button>
      </span>
    </section>
  );
}
