"use client";
/** The bar above a script: the kind of the caret's line, live fields, comments. Reached with Shift and Tab. */
import type { Editor } from "@tiptap/core";
import { useEffect, useId } from "react";
import { readAt } from "#lib/doc/script.ts";
import { withKind } from "#lib/editor/lines.ts";
import { isCueKind, KIND_HINTS, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { CUE_KINDS } from "#lib/plan/schema.ts";
import type { ItemTalk } from "#lib/talk/talk.ts";
import { talkOver, talkWords } from "#lib/talk/talk-words.ts";
import styles from "./script.module.css";
import { BEGIN, beginsWords, SELECT_WORDS_FIRST } from "./script-words.ts";
import type { ScriptNow } from "./use-script.ts";

interface Props {
  readonly editor: Editor | null;
  readonly now: ScriptNow;
  readonly readOnly: boolean;
  readonly comments: boolean;
  readonly onComment: () => void;
  readonly onMoment: () => void;
  /** The item's talk; undefined while nothing is said. */
  readonly talk: ItemTalk | undefined;
  /** Id of the sentence that explains the keys. */
  readonly hint: string;
}

export function ScriptBar({ editor, now, readOnly, comments, onComment, onMoment, talk, hint }: Props) {
  useEffect(() => {
    if (editor && !editor.isDestroyed) editor.view.dom.setAttribute("aria-describedby", hint);
  }, [editor, hint]);
  return (
    <div className={styles.bar}>
      {!readOnly && <KindChoice editor={editor} now={now} />}
      {!readOnly && (
        <button type="button" className={styles.act} onClick={() => openFields(editor)}>
          Live field
        </button>
      )}
      {!readOnly && <Moment now={now} onMoment={onMoment} />}
      {comments && (
        <button
          type="button"
          className={styles.act}
          aria-disabled={!now.hasWords}
          title={now.hasWords ? undefined : SELECT_WORDS_FIRST}
          // Pressing the button must not clear the selection before it is read.
          onPointerDown={(event) => event.preventDefault()}
          onClick={() => now.hasWords && onComment()}
        >
          Comment on these words
        </button>
      )}
      {talk && (
        <p className={styles.talk} data-over={talkOver(talk) > 0 || undefined}>
          {talkWords(talk)}
        </p>
      )}
    </div>
  );
}

/** When the caret's line begins. */
function Moment({ now, onMoment }: Pick<Props, "now" | "onMoment">) {
  const at = readAt(now.at);
  const cannot = now.kind === "setup" && at === undefined;
  return (
    <button
      type="button"
      className={styles.act}
      aria-disabled={cannot}
      title={cannot ? BEGIN.ofSetup : undefined}
      onClick={() => cannot || onMoment()}
    >
      {beginsWords(at)}
    </button>
  );
}

function KindChoice({ editor, now }: Pick<Props, "editor" | "now">) {
  const id = useId();
  function choose(value: string) {
    if (!editor || editor.isDestroyed || !isCueKind(value)) return;
    const tr = withKind(editor.state, value);
    if (tr) editor.view.dispatch(tr);
  }
  return (
    <div className={styles.kindChoice}>
      <label htmlFor={id}>This line</label>
      <select id={id} value={now.kind ?? "form"} onChange={(event) => choose(event.target.value)}>
        {CUE_KINDS.map((kind, i) => (
          <option key={kind} value={kind} title={KIND_HINTS[kind]}>
            {KIND_WORDS[kind]} (Alt {i + 1})
          </option>
        ))}
      </select>
    </div>
  );
}

/** Types the brace for the writer, which opens the same list as typing it does. */
function openFields(editor: Editor | null): void {
  if (!editor || editor.isDestroyed) return;
  const { view } = editor;
  view.focus();
  view.dispatch(view.state.tr.insertText("{").scrollIntoView());
}
