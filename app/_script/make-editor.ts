/**
 * Makes the editor of one item's script: all of its plugins at once, since one registered later would cut the page's
 * undo off. It is made after the document was read and only for the item that is selected.
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

export interface EditorWants {
  readonly element: HTMLElement;
  readonly session: PlanSession;
  readonly fragment: Y.XmlFragment;
  readonly box: FactsBox;
  readonly editable: boolean;
  readonly label: string;
  readonly onMisfit: (what: string) => void;
  readonly onPick: (threadId: string) => void;
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
      CueLine.extend({ addNodeView: () => lineView(box) }),
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
    editorProps: {
      attributes: { "aria-label": wants.label, role: "textbox", "aria-multiline": "true", class: "script-text" },
      // Before the editor reads the clipboard: it would make a page of what may be a whole book.
      handleDOMEvents: {
        focus: (view) => showCaret(view),
        copy: (view, event) => copy(view, event),
        cut: (view, event) => cut(view, event, session),
        paste: (view, event) => paste(view, event, session),
        drop: (view, event) => refuseFromOutside(view, event),
      },
    },
  });
  editor.on("transaction", () => wants.onChange(editor));
  return editor;
}

/**
 * Tab gives the script the focus and no caret: the page has no selection, and the first letters go nowhere. The browser
 * settles its own selection after telling of the focus, so it is looked at once more in the next frame.
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

/** Plain text alone: another program would take marked-up text first, and with it lines without their kinds. */
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

/** Marked-up text from elsewhere is taken as plain words; what was copied in a script keeps its lines and fields. */
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
  if (leftOut > 0) session.say(`Pasted in part: ${leftOut} characters more did not fit into one script.`);
  return true;
}

/** Words are moved inside a script by dragging them; what comes from elsewhere is pasted. */
function refuseFromOutside(view: EditorView, event: DragEvent): boolean {
  if (view.dragging !== null) return false;
  event.preventDefault();
  return true;
}
