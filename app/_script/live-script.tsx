"use client";
/** The script while it can be written: the bar, the lines, the list of live fields, comments on words, stock lines. */
import { useId, useState } from "react";
import type * as Y from "yjs";
import { CommentForm } from "#app/_margin/comment-form.tsx";
import { QuoteWords } from "#app/_margin/quote-words.tsx";
import { postThread } from "#app/_margin/thread-acts.ts";
import type { PlanSession } from "#app/_plan/session.ts";
import { useSnapshot } from "#app/_plan/use-session.ts";
import { flatOffsetAt } from "#lib/editor/thread-marks.ts";
import { pinWords, type WordsAnchor } from "#lib/margin/pin.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { FieldList } from "./field-list.tsx";
import styles from "./script.module.css";
import { ScriptBar } from "./script-bar.tsx";
import { StockLines } from "./stock-lines.tsx";
import { useScript } from "./use-script.ts";

interface Props {
  readonly session: PlanSession;
  readonly item: MoveItem;
  readonly fragment: Y.XmlFragment;
  readonly label: string;
  readonly readOnly: boolean;
}

export function LiveScript(props: Props) {
  const { session, item, fragment, readOnly } = props;
  const snapshot = useSnapshot(session);
  const script = useScript({ ...props, snapshot });
  const { editor, now } = script;
  const [commentOn, setCommentOn] = useState<WordsAnchor | null>(null);
  const hint = useId();

  function startComment() {
    if (!editor || editor.isDestroyed) return;
    const { from, to } = editor.state.selection;
    const { doc } = editor.state;
    const anchor = pinWords(fragment, item.id, flatOffsetAt(doc, from), flatOffsetAt(doc, to));
    if (anchor) setCommentOn(anchor);
    else session.say("These are too many words for one comment. Choose fewer, or comment on the item.");
  }
  function leaveComment() {
    setCommentOn(null);
    if (editor && !editor.isDestroyed) editor.view.focus();
  }

  return (
    <section className={styles.script} aria-label={props.label}>
      <ScriptBar
        editor={editor}
        now={now}
        readOnly={readOnly}
        comments={snapshot.rights.comments}
        onComment={startComment}
        talk={snapshot.talk.get(item.id)}
        hint={hint}
      />
      {commentOn && (
        <div className={styles.comment}>
          <QuoteWords quote={commentOn.quote} plan={snapshot.plan} itemId={item.id} />
          <CommentForm
            label="Comment on these words"
            verb="Comment"
            post={(body) => postThread(session, commentOn, body)}
            onPosted={() => {
              session.say("Comment pinned to these words.");
              leaveComment();
            }}
            onLeave={leaveComment}
          />
        </div>
      )}
      <div className={styles.paper}>
        <div ref={script.place} className={styles.place} />
        <FieldList editor={editor} offer={now.offer} />
      </div>
      {!readOnly && <StockLines session={session} plan={snapshot.plan} item={item} />}
      <p id={hint} className={styles.hint}>
        {readOnly
          ? "You read along. Choose words to comment on them."
          : "Enter: next line. { : a live field. Alt and 1 to 9: the line’s kind. Tab leaves the script."}
      </p>
    </section>
  );
}
