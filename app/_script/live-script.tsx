"use client";
/** The script in its editor: the bar, the lines, the list of live fields, comments on words, lines from the library. */
import type { Editor } from "@tiptap/core";
import { useId, useState } from "react";
import type * as Y from "yjs";
import type { PlanSession } from "#app/_session/session.ts";
import { CommentForm } from "#app/_session/threads/comment-form.tsx";
import { QuoteWords } from "#app/_session/threads/quote-words.tsx";
import { postThread, type Written } from "#app/_session/threads/thread-acts.ts";
import { PLACE, type Typed } from "#app/_session/typed/typed-words.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { flatOffsetAt } from "#lib/editor/thread-marks.ts";
import { pinWords, type WordsAnchor } from "#lib/margin/pin.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { ChangeSteps } from "./change-steps.tsx";
import { FieldList } from "./field-list.tsx";
import { MomentDialog, useMoment } from "./moment-dialog.tsx";
import styles from "./script.module.css";
import { ScriptBar } from "./script-bar.tsx";
import { READER_HINT, TOO_MANY_WORDS, WORDS_COMMENT, WORDS_COMMENT_SENT, WRITER_HINT } from "./script-words.ts";
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
  const moment = useMoment(fragment);
  const script = useScript({ ...props, snapshot, onMoment: moment.open });
  const { editor, now } = script;
  const { rights, talk, plan } = snapshot;
  const comment = useWordsComment(props, editor);
  const hint = useId();
  return (
    <section className={styles.script} aria-label={props.label}>
      <ChangeSteps {...{ plan, item, editor, readOnly }} />
      <ScriptBar
        {...{ editor, now, readOnly, hint }}
        comments={rights.comments}
        onComment={comment.start}
        onMoment={() => moment.open(now.line)}
        talk={talk.get(item.id)}
      />
      {comment.about && (
        <WordsComment
          session={session}
          item={item}
          about={comment.about}
          begun={comment.begun}
          onLeave={comment.leave}
        />
      )}
      <div className={styles.paper}>
        <div ref={script.place} className={styles.place} />
        <FieldList editor={editor} offer={now.offer} />
      </div>
      {moment.line && !readOnly && (
        <MomentDialog session={session} item={item} line={moment.line} onClose={moment.close} />
      )}
      {!readOnly && <StockLines session={session} plan={plan} item={item} />}
      <Hint id={hint} readOnly={readOnly} />
    </section>
  );
}

/** A comment on the words that are selected, while it is written. */
function useWordsComment({ session, item, fragment }: Props, editor: Editor | null) {
  // Words that were kept open their form again.
  const [about, setAbout] = useState<WordsAnchor | null>(() => keptPin(session.typed.at(PLACE.words(item.id))));
  const [begun, setBegun] = useState(false);
  const start = () => {
    if (!editor || editor.isDestroyed) return;
    const { from, to } = editor.state.selection;
    const { doc } = editor.state;
    const anchor = pinWords(fragment, item.id, flatOffsetAt(doc, from), flatOffsetAt(doc, to));
    setBegun(true);
    if (anchor) setAbout(anchor);
    else session.say(TOO_MANY_WORDS);
  };
  const leave = () => {
    setAbout(null);
    if (editor && !editor.isDestroyed) editor.view.focus();
  };
  return { about, begun, start, leave };
}

const keptPin = (typed: Typed | undefined): WordsAnchor | null =>
  typed?.anchor?.kind === "words" ? typed.anchor : null;

const Hint = ({ id, readOnly }: { readonly id: string; readonly readOnly: boolean }) => (
  <p id={id} className="quiet small">
    {readOnly ? READER_HINT : WRITER_HINT}
  </p>
);

interface CommentProps extends Pick<Props, "session" | "item"> {
  readonly about: WordsAnchor;
  /** False while it stands open with words from before. */
  readonly begun: boolean;
  readonly onLeave: () => void;
}

function WordsComment({ session, item, about, begun, onLeave }: CommentProps) {
  const { plan } = useSnapshot(session);
  // The words may go while somebody writes about them: what was written can then be pinned to the plate.
  const [refused, setRefused] = useState<WordsAnchor | null>(null);
  const wordsGone = refused === about;
  const post = async (written: Written) => {
    const sent = await postThread(session, wordsGone ? { kind: "item", itemId: item.id } : about, written);
    if (!sent.ok && sent.code === "words-gone") setRefused(about);
    return sent;
  };
  return (
    <div className={styles.comment}>
      {!wordsGone && <QuoteWords quote={about.quote} plan={plan} itemId={item.id} />}
      <CommentForm
        session={session}
        at={{ place: PLACE.words(item.id), label: WORDS_COMMENT, items: [item.id], anchor: about }}
        focus={begun}
        label={wordsGone ? "Comment on the plate" : WORDS_COMMENT}
        verb={wordsGone ? "Comment on the plate" : "Comment"}
        place={{ moveId: item.move }}
        post={post}
        onPosted={() => {
          session.say(WORDS_COMMENT_SENT);
          onLeave();
        }}
        onLeave={onLeave}
      />
    </div>
  );
}
