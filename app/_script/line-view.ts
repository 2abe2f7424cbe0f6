/**
 * How a cue line and a live field look in the editor. Plain DOM: a script has many lines, and they must keep up with
 * typing. The kind is a native choice, outside the tab order (the bar above has the same choice for the caret's line).
 */
import type { NodeViewRendererProps } from "@tiptap/core";
import type { Node } from "@tiptap/pm/model";
import type { EditorView, NodeView } from "@tiptap/pm/view";
import { lineText } from "#lib/editor/lines.ts";
import { isCueKind, KIND_WORDS, kindOf } from "#lib/plan/cue-words.ts";
import { CUE_KINDS } from "#lib/plan/schema.ts";
import type { FactsBox } from "./facts-box.ts";

type Props = Pick<NodeViewRendererProps, "node" | "view" | "getPos">;

export const lineView = (box: FactsBox) => (props: Props) => new LineView(props, box);
export const fieldView = (box: FactsBox) => (props: Props) => new FieldView(props, box);

class LineView implements NodeView {
  readonly dom = document.createElement("div");
  readonly contentDOM = document.createElement("div");
  private readonly select = document.createElement("select");
  private readonly seconds = document.createElement("span");
  private readonly unsubscribe: () => void;
  private node: Node;

  constructor(
    private readonly props: Props,
    private readonly box: FactsBox,
  ) {
    this.node = props.node;
    this.dom.className = "script-line";
    this.contentDOM.className = "script-words";
    this.seconds.className = "script-seconds";
    this.seconds.contentEditable = "false";
    this.select.addEventListener("change", this.change);
    const kind = document.createElement("div");
    kind.className = "script-kind";
    kind.contentEditable = "false";
    kind.append(this.select);
    this.select.tabIndex = -1;
    this.dom.append(kind, this.contentDOM, this.seconds);
    this.unsubscribe = box.subscribe(this.draw);
    this.draw();
  }

  update(node: Node): boolean {
    if (node.type !== this.node.type) return false;
    this.node = node;
    this.draw();
    return true;
  }

  stopEvent(event: Event): boolean {
    return event.target === this.select;
  }

  /** Only what is inside the words is the editor's to read. */
  ignoreMutation(mutation: { type: string; target: globalThis.Node }): boolean {
    return mutation.type !== "selection" && !this.contentDOM.contains(mutation.target);
  }

  destroy(): void {
    this.unsubscribe();
    this.select.removeEventListener("change", this.change);
  }

  private readonly draw = (): void => {
    const stored: unknown = this.node.attrs.kind;
    const kind = kindOf(stored);
    this.dom.dataset.kind = kind;
    this.dom.toggleAttribute("data-empty", this.node.content.size === 0);
    this.contentDOM.dataset.hint = this.node.content.size === 0 ? `${KIND_WORDS[kind]}…` : "";
    this.drawKind(typeof stored === "string" && !isCueKind(stored) ? stored : kind);
    const seconds = this.box.facts.secondsOf(kind, lineText(this.node));
    setText(this.seconds, seconds === null || seconds < 0.5 ? "" : `${Math.round(seconds)} s`);
  };

  /** A kind this version does not know stays, and is shown as it is written. */
  private drawKind(shown: string): void {
    const kinds: string[] = [...CUE_KINDS];
    if (!kinds.includes(shown)) kinds.push(shown);
    if (
      this.select.options.length !== kinds.length ||
      this.select.options.item(kinds.length - 1)?.value !== kinds.at(-1)
    ) {
      this.select.replaceChildren(...kinds.map((k) => new Option(isCueKind(k) ? KIND_WORDS[k] : k, k)));
    }
    if (this.select.value !== shown) this.select.value = shown;
    this.select.setAttribute("aria-label", `kind of this line: ${isCueKind(shown) ? KIND_WORDS[shown] : shown}`);
    this.select.disabled = !this.props.view.editable;
  }

  private readonly change = (): void => {
    const pos = this.props.getPos();
    const { view } = this.props;
    if (pos === undefined || !view.editable || !isCueKind(this.select.value)) return;
    view.dispatch(view.state.tr.setNodeAttribute(pos, "kind", this.select.value));
    view.focus();
  };
}

class FieldView implements NodeView {
  readonly dom = document.createElement("span");
  private readonly unsubscribe: () => void;
  private node: Node;

  constructor(
    private readonly props: Props,
    private readonly box: FactsBox,
  ) {
    this.node = props.node;
    this.dom.className = "script-field";
    this.unsubscribe = box.subscribe(this.draw);
    this.draw();
  }

  update(node: Node): boolean {
    if (node.type !== this.node.type) return false;
    this.node = node;
    this.draw();
    return true;
  }

  ignoreMutation(): boolean {
    return true;
  }

  destroy(): void {
    this.unsubscribe();
  }

  private readonly draw = (): void => {
    const name = String(this.node.attrs.name);
    const line = lineOf(this.props.view, this.props.getPos());
    const kind = kindOf(line?.attrs.kind);
    const says = this.box.facts.fieldSays(name, kind, line ? lineText(line) : "");
    setText(this.dom, says);
    this.dom.title = `{${name}}: filled in by the plan`;
  };
}

/** While a change is being drawn a position may be one of the document before it. */
function lineOf(view: EditorView, pos: number | undefined): Node | null {
  if (pos === undefined || pos > view.state.doc.content.size) return null;
  const { parent } = view.state.doc.resolve(pos);
  return parent.isTextblock ? parent : null;
}

function setText(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
