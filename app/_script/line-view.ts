/**
 * How a cue line and a live field look in the editor. Plain DOM, since a script has many lines and they must keep up with
 * typing. The kind and the moment are outside the tab order: the bar above has the same choices for the caret's line.
 */
import type { NodeViewRendererProps } from "@tiptap/core";
import type { Node } from "@tiptap/pm/model";
import type { EditorView, NodeView } from "@tiptap/pm/view";
import { LINE_AT } from "#lib/doc/layout.ts";
import { readAt } from "#lib/doc/script.ts";
import { lineText } from "#lib/editor/lines.ts";
import { beginWords, isCueKind, KIND_WORDS, kindOf } from "#lib/plan/cue-words.ts";
import { clockTime } from "#lib/plan/format.ts";
import { CUE_KINDS, type LineBegin } from "#lib/plan/schema.ts";
import { lineKindWords } from "../_session/line-words.ts";
import type { FactsBox } from "./facts-box.ts";
import { fieldTitle, lineTimesWords } from "./script-words.ts";

type Props = Pick<NodeViewRendererProps, "node" | "view" | "getPos">;

/** `onMoment`: the moment of the line of that index was pressed. */
export const lineView = (box: FactsBox, onMoment: (index: number) => void) => (props: Props) =>
  new LineView(props, box, onMoment);
export const fieldView = (box: FactsBox) => (props: Props) => new FieldView(props, box);

class LineView implements NodeView {
  readonly dom = document.createElement("div");
  readonly contentDOM = document.createElement("div");
  private readonly select = document.createElement("select");
  private readonly moment = new MomentButton(() => this.askMoment());
  private readonly unsubscribe: () => void;
  private node: Node;

  constructor(
    private readonly props: Props,
    private readonly box: FactsBox,
    private readonly onMoment: (index: number) => void,
  ) {
    this.node = props.node;
    this.dom.className = "script-line";
    this.contentDOM.className = "script-words";
    this.select.addEventListener("change", this.change);
    const kind = document.createElement("div");
    kind.className = "script-kind";
    kind.contentEditable = "false";
    kind.append(this.select);
    this.select.tabIndex = -1;
    const times = document.createElement("div");
    times.className = "script-times";
    times.contentEditable = "false";
    times.append(this.moment.dom);
    this.dom.append(kind, this.contentDOM, times);
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
    return event.target === this.select || this.moment.holds(event.target);
  }

  /** Of all changes to the DOM the editor reads only those to the words. */
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
    const at = readAt(this.node.attrs[LINE_AT]);
    const mayBegin = kind !== "setup" && this.node.content.size > 0;
    this.moment.draw({
      at,
      from: this.beginsAt(),
      talk: seconds === null || seconds < 0.5 ? "" : `${Math.round(seconds)} s`,
      canSet: this.props.view.editable && (mayBegin || at !== undefined),
    });
  };

  /** The plan counts the lines that have words. */
  private beginsAt(): number | null {
    const pos = this.props.getPos();
    if (pos === undefined || this.node.content.size === 0) return null;
    let index = 0;
    this.props.view.state.doc.forEach((line, at) => {
      if (at < pos && line.content.size > 0) index++;
    });
    return this.box.facts.beginsAt(index);
  }

  private askMoment(): void {
    const pos = this.props.getPos();
    if (pos !== undefined) this.onMoment(this.props.view.state.doc.resolve(pos).index(0));
  }

  /** A kind that this version does not know stays and is shown as it is written. */
  private drawKind(shown: string): void {
    const kinds: string[] = [...CUE_KINDS];
    if (!kinds.includes(shown)) kinds.push(shown);
    if (
      this.select.options.length !== kinds.length ||
      this.select.options.item(kinds.length - 1)?.value !== kinds.at(-1)
    ) {
      this.select.replaceChildren(...kinds.map((k) => new Option(lineKindWords(k), k)));
    }
    if (this.select.value !== shown) this.select.value = shown;
    this.select.setAttribute("aria-label", `kind of this line: ${lineKindWords(shown)}`);
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

interface Moment {
  readonly at: LineBegin | undefined;
  /** In seconds of the class; null for a line that is not said. */
  readonly from: number | null;
  /** How long it takes to say; "" for nothing. */
  readonly talk: string;
  readonly canSet: boolean;
}

/** What was set of when a line begins, its time in the class, and how long it takes to say. */
class MomentButton {
  readonly dom = document.createElement("button");
  private readonly set = document.createElement("span");
  private readonly clock = document.createElement("span");
  private readonly talk = document.createElement("span");

  constructor(onPress: () => void) {
    this.dom.type = "button";
    this.dom.tabIndex = -1;
    this.dom.className = "script-moment";
    this.set.className = "script-set";
    this.dom.append(this.set, this.clock, this.talk);
    this.dom.addEventListener("click", onPress);
  }

  holds(target: EventTarget | null): boolean {
    return target instanceof globalThis.Node && this.dom.contains(target);
  }

  draw({ at, from, talk, canSet }: Moment): void {
    const clock = from === null ? "" : clockTime(from);
    setText(this.set, at ? beginWords(at) : "");
    setText(this.clock, clock || (canSet && !at ? "when" : ""));
    setText(this.talk, talk);
    this.dom.setAttribute("aria-label", lineTimesWords(at, from, talk));
    this.dom.disabled = !canSet;
    this.dom.hidden = this.dom.textContent === "";
  }
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
    this.dom.title = fieldTitle(name);
  };
}

/** While a change is being drawn, a position may still belong to the document before it. */
function lineOf(view: EditorView, pos: number | undefined): Node | null {
  if (pos === undefined || pos > view.state.doc.content.size) return null;
  const { parent } = view.state.doc.resolve(pos);
  return parent.isTextblock ? parent : null;
}

function setText(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
