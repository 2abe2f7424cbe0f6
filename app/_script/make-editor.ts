/**
 * Makes the editor of one item's script with all of its plugins at once: one registered later would cut off the page's
 * undo. It is made after the document was read, and only for the selected item.
 */
import { Editor } from "@tiptap/core";
import type { EditorView } from "@tiptap/pm/view";
import type * as Y from "yjs";
import type { PlanSession } from "#app/_session/session.ts";
import { copiedText, withoutCopied } from "#lib/editor/copied.ts";
import { FieldOffers } from "#lib/editor/field-offer.ts";
import { ScriptKeys } from "#lib/editor/keys.ts";
import { CueLine, LiveFieldNode, ScriptDocument, scriptText } from "#lib/editor/nodes.ts";
import { withPasted } from "#lib/editor/paste.ts";
import { linesFromText } from "#lib/editor/pasted.ts";
import { SharedScript } from "#lib/editor/shared.ts";
import { ThreadMarks } from "#lib/editor/thread-marks.ts";
import { drawCaret } from "./caret.ts";
import type { FactsBox } from "./facts-box.ts";
import { fieldView, lineView } from "./line-view.ts";
import { pastedInPartWords } from "./script-words.ts";

interface EditorWants {
  readonly element: HTMLElement;
  readonly session: PlanSession;
  readonly fragment: Y.XmlFragment;
  readonly box: FactsBox;
  readonly editable: boolean;
  readonly label: string;
  readonly onMisfit: (what: string) => void;
  readonly onPick: (threadId: string) => void;
  readonly onMoment: (index: number) => void;
  /** After every change of the text or the selection. */
  readonly onChange: (editor: Editor) => void;
}

export function makeEditor(wants: EditorWants): Editor {
  const { session, fragment, box } = wants;
  const editor = new Editor({
    element: wants.element,
    editable: wants.editable,
    injectCSS: false,
    enableCoreExtensions: { keymap: false, clipboardTextSerializer: false, drop: false, paste: false, delete: false },
    extensions: [
      ScriptDocument,
      CueLine.extend({ addNodeView: () => lineView(box, wants.onMoment) }),
      LiveFieldNode.extend({ addNodeView: () => fieldView(box) }),
      scriptText,
      SharedScript.configure({
        shared: {
          fragment,
          awareness: session.awareness,
          manager: session.history.manager,
          undo: () => session.undo(),
          redo: () => session.redo(),
          caret: drawCaret,
          onMisfit: wants.onMisfit,
        },
      }),
      FieldOffers,
      ScriptKeys,
      ThreadMarks.configure({ fragment, onPick: wants.onPick }),
    ],
    editorProps: propsOf(wants),
  });
  editor.on("transaction", () => wants.onChange(editor));
  return editor;
}

/** Clipboard events are handled before the editor parses them: what is pasted may be as long as a book. */
const propsOf = ({ label, session }: EditorWants) => ({
  attributes: { "aria-label": label, role: "textbox", "aria-multiline": "true", class: "script-text" },
  handleDOMEvents: {
    focus: (view: EditorView) => showCaret(view),
    copy: (view: EditorView, event: ClipboardEvent) => copy(view, event),
    cut: (view: EditorView, event: ClipboardEvent) => cut(view, event, session),
    paste: (view: EditorView, event: ClipboardEvent) => paste(view, event, session),
    drop: (view: EditorView, event: DragEvent) => refuseFromOutside(view, event),
  },
});

/**
 * Tab gives the script the focus but no caret, and the first letters would be lost. The browser sets its own selection after
 * the focus event, so the caret is checked again in the next frame.
 */
function showCaret(view: EditorView): boolean {
  const show = () => {
    if (view.isDestroyed || !view.editable || !view.hasFocus()) return;
    if (!view.dom.contains(document.getSelection()?.anchorNode ?? null)) view.focus();
  };
  queueMicrotask(show);
  requestAnimationFrame(show);
  return false;
}

/** Plain text only: other programs would take marked-up text first and paste lines without their kinds. */
function copy(view: EditorView, event: ClipboardEvent): boolean {
  const text = copiedText(view.state);
  if (text === "" || !event.clipboardData) return false;
  event.preventDefault();
  event.clipboardData.setData("text/plain", text);
  return true;
}

function cut(view: EditorView, event: ClipboardEvent, session: PlanSession): boolean {
  if (!view.editable) {
    event.preventDefault();
    return true;
  }
  if (!copy(view, event)) return false;
  session.history.manager.stopCapturing();
  view.dispatch(withoutCopied(view.state));
  session.history.manager.stopCapturing();
  return true;
}

/** Marked-up text from elsewhere is pasted as plain words; what was copied in a script keeps its lines and fields. */
function paste(view: EditorView, event: ClipboardEvent, session: PlanSession): boolean {
  event.preventDefault();
  if (!view.editable) return true;
  const data = event.clipboardData;
  const text = data?.getData("text/plain") ?? "";
  if (text === "") return true;
  const { lines, leftOut } = linesFromText(text);
  const tr = withPasted(view.state, lines);
  session.history.manager.stopCapturing();
  if (tr) view.dispatch(tr);
  session.history.manager.stopCapturing();
  if (leftOut > 0) session.say(pastedInPartWords(leftOut));
  return true;
}

/** Words can be dragged within a script; text from elsewhere has to be pasted. */
function refuseFromOutside(view: EditorView, event: DragEvent): boolean {
  if (view.dragging !== null) return false;
  event.preventDefault();
  return true;
}
