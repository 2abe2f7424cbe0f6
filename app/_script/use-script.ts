"use client";
/** Makes the editor when its place is on the page, tells it of changes to the plan, and removes it again. */
import type { Editor } from "@tiptap/core";
import { type RefObject, useEffect, useRef, useState } from "react";
import type * as Y from "yjs";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { LINE_AT } from "#lib/doc/layout.ts";
import { type FieldOffer, offerOf } from "#lib/editor/field-offer.ts";
import { itemFacts } from "#lib/editor/item-facts.ts";
import { editorLineAt } from "#lib/editor/lines.ts";
import { showThreads, type WordsThread } from "#lib/editor/thread-marks.ts";
import type { CueKind, MoveItem } from "#lib/plan/schema.ts";
import { answerLineRequests } from "../_session/go-to-line.ts";
import { FactsBox } from "./facts-box.ts";
import { makeEditor } from "./make-editor.ts";

/** What the bar and the list of live fields need to know of the editor. */
export interface ScriptNow {
  readonly kind: CueKind | null;
  /** Index of the caret's line, and what its attribute says of when it begins. */
  readonly line: number;
  readonly at: unknown;
  readonly hasWords: boolean;
  readonly offer: FieldOffer | null;
}
const NOTHING: ScriptNow = { kind: null, line: 0, at: null, hasWords: false, offer: null };

interface ScriptWants {
  readonly session: PlanSession;
  readonly snapshot: SessionSnapshot;
  readonly item: MoveItem;
  readonly fragment: Y.XmlFragment;
  readonly label: string;
  readonly readOnly: boolean;
  readonly onMoment: (index: number) => void;
}

interface Script {
  readonly place: RefObject<HTMLDivElement | null>;
  readonly editor: Editor | null;
  readonly now: ScriptNow;
}

export function useScript(wants: ScriptWants): Script {
  const { session, fragment } = wants;
  const place = useRef<HTMLDivElement>(null);
  const [editor, setEditor] = useState<Editor | null>(null);
  const [now, setNow] = useState<ScriptNow>(NOTHING);
  const [box] = useState(() => new FactsBox());
  const newest = useRef(wants);
  newest.current = wants;

  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const { label, readOnly: reads } = newest.current;
    session.history.manager.stopCapturing();
    const made = makeEditor({
      element,
      session,
      fragment,
      box,
      label,
      editable: !reads,
      onMisfit: () => made.destroy(),
      onPick: showSlip,
      onMoment: (index) => newest.current.onMoment(index),
      onChange: (changed) => setNow((before) => nextNow(before, changed)),
    });
    setEditor(made);
    const stop = answerLineRequests(session, newest.current.item.id, made);
    return () => {
      stop();
      session.history.manager.stopCapturing();
      made.destroy();
      setEditor(null);
      setNow(NOTHING);
    };
  }, [session, fragment, box]);

  useTold(editor, box, wants);
  return { place, editor, now };
}

/** Tells the editor of rights, of the plan that its live fields read, and of the threads on its words. */
function useTold(editor: Editor | null, box: FactsBox, { snapshot, item, readOnly }: ScriptWants): void {
  const { threads, plan, rows, total, track } = snapshot;
  useEffect(() => {
    if (!editor || editor.isDestroyed) return;
    if (editor.isEditable === readOnly) editor.setEditable(!readOnly, false);
    editor.view.dom.setAttribute("aria-readonly", String(readOnly));
  }, [editor, readOnly]);
  useEffect(() => {
    box.set(itemFacts({ plan, rows, total, track }, item.id));
  }, [box, plan, rows, total, track, item.id]);
  useEffect(() => {
    if (editor && !editor.isDestroyed) showThreads(editor.view, wordsThreads(threads, item.id));
  }, [editor, threads, item.id]);
}

function wordsThreads(threads: SessionSnapshot["threads"], itemId: string): WordsThread[] {
  return threads.flatMap(({ id, anchor, settled }) =>
    anchor.kind === "words" && anchor.itemId === itemId && !settled ? [{ id, anchor }] : [],
  );
}

/** The thread's slip, wherever the margin is on this screen. */
function showSlip(threadId: string): void {
  const slip = document.getElementById(`thread-${threadId}`);
  slip?.scrollIntoView({ block: "nearest" });
  slip?.focus({ preventScroll: true });
}

/** The same object when nothing that is shown has changed, so that typing does not draw the bar again. */
function nextNow(before: ScriptNow, editor: Editor): ScriptNow {
  if (editor.isDestroyed) return before;
  const { state } = editor;
  const offer = offerOf(state);
  const line = editorLineAt(state.doc, state.selection.from);
  const next: ScriptNow = {
    kind: line?.kind ?? null,
    line: line?.index ?? 0,
    at: line?.node.attrs[LINE_AT] ?? null,
    hasWords: state.doc.textBetween(state.selection.from, state.selection.to, " ", "x").trim() !== "",
    offer,
  };
  const keys = Object.keys(next) as (keyof ScriptNow)[];
  return keys.every((key) => before[key] === next[key]) ? before : next;
}
