"use client";
/** The lines proposed for one move, in lighter ink: taken all at once or one by one, or left. */
import type { PlanSession } from "#app/_session/session.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import { type DraftLine, takeDraft } from "#lib/draft/first-draft.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import styles from "./draft.module.css";
import { DRAFT_NOTE, LEFT_SAID, PROPOSED, takeThese } from "./draft-words.ts";
import { leaveLines, leftKey } from "./left-lines.ts";
import { useFirstDraft } from "./use-first-draft.ts";

interface DraftLinesProps {
  readonly session: PlanSession;
  readonly item: MoveItem;
}

export function DraftLines({ session, item }: DraftLinesProps) {
  const snap = useSnapshot(session);
  const draft = useFirstDraft(session, snap);
  const lines = draft.get(item.id);
  if (!lines) return null;
  const read = readerOf(snap.plan, snap);
  return (
    <section className={styles.proposed} aria-label={PROPOSED}>
      <div className={styles.head}>
        <h3>{PROPOSED}</h3>
        <button type="button" className="button" onClick={() => takeFix(session, takeDraft(draft, [item.id]))}>
          {takeThese(lines.length)}
        </button>
      </div>
      <ul>
        {lines.map((one) => (
          <li key={leftKey(item.id, one.line)}>
            <span className={styles.kind}>{KIND_WORDS[one.line.kind]}</span>
            <span className={styles.words}>{read(item, one.line.text)}</span>
            <Acts session={session} item={item} one={one} />
          </li>
        ))}
      </ul>
      <p className="quiet small">{DRAFT_NOTE}</p>
    </section>
  );
}

/** Beside a line: each says to a screen reader which line it is about. */
function Acts({ session, item, one }: DraftLinesProps & { readonly one: DraftLine }) {
  const kind = KIND_WORDS[one.line.kind];
  const leaveIt = () => {
    leaveLines(session.planId, [leftKey(item.id, one.line)]);
    session.say(LEFT_SAID);
  };
  return (
    <span className={styles.acts}>
      <button
        type="button"
        className="act"
        onClick={() => takeFix(session, { label: `Take the ${kind} line`, changes: [one.change] })}
      >
        Take<span className="visually-hidden"> the {kind} line</span>
      </button>
      <button type="button" className="act" onClick={leaveIt}>
        Leave<span className="visually-hidden"> the {kind} line</span>
      </button>
    </span>
  );
}
