/**
 * Goes to one line of an item's script from elsewhere on the page. The editor of another item has to be made first, so
 * the request waits until it is there.
 */
import type { Editor } from "@tiptap/core";
import { TextSelection } from "@tiptap/pm/state";
import { showFound } from "#app/_parts/show-found.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { wordedLine } from "#lib/editor/lines.ts";

interface LineRequest {
  readonly itemId: string;
  /** Index among the lines that have words, as the plan counts them. */
  readonly line: number;
}
interface Held {
  request: LineRequest | null;
  readonly listeners: Set<() => void>;
}
const held = new WeakMap<PlanSession, Held>();

function heldOf(session: PlanSession): Held {
  const known = held.get(session) ?? { request: null, listeners: new Set() };
  held.set(session, known);
  return known;
}

/** Chooses the item and puts the caret at the end of the line. */
export function goToLine(session: PlanSession, itemId: string, line: number): void {
  const own = heldOf(session);
  own.request = { itemId, line };
  session.select(itemId);
  for (const listener of own.listeners) listener();
}

/** Answers requests for an item while its editor is there, one that waits already included. Returns the way to stop. */
export function answerLineRequests(session: PlanSession, itemId: string, editor: Editor): () => void {
  const own = heldOf(session);
  const answer = () => {
    if (own.request?.itemId !== itemId || editor.isDestroyed) return;
    const { line } = own.request;
    own.request = null;
    show(editor, line);
  };
  own.listeners.add(answer);
  answer();
  return () => own.listeners.delete(answer);
}

/** The caret at the end of the line where one writes; else the focus on the script, which a reader does not tab to. */
function show(editor: Editor, wanted: number): void {
  const { view } = editor;
  const found = wordedLine(view.state.doc, wanted);
  const pos = found?.pos ?? 0;
  const end = pos + 1 + (found?.node.content.size ?? 0);
  view.dispatch(view.state.tr.setSelection(TextSelection.create(view.state.doc, end)));
  const element = view.nodeDOM(pos);
  if (!view.editable) view.dom.tabIndex = -1;
  view.focus();
  if (document.activeElement !== view.dom) view.dom.focus({ preventScroll: true });
  if (element instanceof HTMLElement) element.scrollIntoView({ block: "center" });
  showFound(() => (editor.isDestroyed ? null : lineElement(editor, wanted)));
}

function lineElement({ view }: Editor, wanted: number): Element | null {
  const found = wordedLine(view.state.doc, wanted);
  const element = found && view.nodeDOM(found.pos);
  return element instanceof Element ? element : null;
}
