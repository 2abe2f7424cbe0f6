/**
 * One shared text in one field. The field always shows the text, except while an input method is composing. Every edit
 * goes into the text as it was made, and when others write the caret stays behind the letter before it. Knows no React
 * and no events: `app/_parts/shared-text.tsx` calls it.
 */
import type * as Y from "yjs";
import { UndoManager } from "yjs";
import { act, type Writer } from "#lib/doc/write.ts";
import {
  type ChangedSpan,
  type Delta,
  type Edit,
  editBetween,
  endOf,
  firstLetters,
  movedPlace,
  survives,
} from "./text-edit.ts";

/** The parts of an input or a textarea that are used. */
export interface TextField {
  value: string;
  readonly selectionStart: number | null;
  readonly selectionEnd: number | null;
  readonly selectionDirection: "forward" | "backward" | "none" | null;
  setSelectionRange(from: number, to: number, direction?: "forward" | "backward" | "none"): void;
}

/** What the binding asks of its page; asked again at every edit. */
export interface TextHost {
  readonly writer: Writer;
  readonly canWrite: boolean;
}

export interface Bound {
  readonly field: TextField;
  readonly text: Y.Text;
  readonly host: TextHost;
  /** Line ends are shown as spaces, since a one-line field cannot hold them. They stay in the text. */
  readonly oneLine: boolean;
  /** How long this page's own typing may make the text. What others wrote beyond it stays. */
  readonly maxLength?: number | undefined;
  /** A field without the focus gets no selection: in some browsers that would focus it. */
  readonly hasFocus: () => boolean;
}

export class TextBinding {
  /** What the field was last known to hold: the text as shown, up to the next edit or while composing. */
  private shown = "";
  private selected: ChangedSpan | null = null;
  /** What others wrote since composing began; null while nothing is composed. */
  private missed: Delta[] | null = null;
  private writing = false;

  constructor(private readonly bound: Bound) {
    this.show(0, 0);
    bound.text.observe(this.hear);
  }

  /** The browser is about to make an edit. */
  beforeEdit(): void {
    if (this.missed === null) this.selected = this.selection();
  }

  /** The field was edited. */
  edited(): void {
    if (this.missed === null) this.take([]);
  }

  compose(): void {
    this.missed ??= [];
    this.selected = null;
  }

  /** Composing has ended. Does nothing where none had begun. */
  composed(): void {
    const { missed } = this;
    this.missed = null;
    if (missed !== null) this.take(missed);
  }

  /** Writes what is still being composed into the text, then parts field and text. */
  release(): void {
    this.composed();
    this.bound.text.unobserve(this.hear);
  }

  private readonly hear = (event: Y.YTextEvent, transaction: Y.Transaction): void => {
    if (this.writing) return;
    const change: Delta = event.delta;
    if (this.missed !== null) {
      this.missed.push(change);
      return;
    }
    const { from, to } = this.selection();
    if (transaction.local && transaction.origin instanceof UndoManager) this.show(endOf(change), endOf(change));
    else this.show(movedPlace(from, change, from === to ? "left" : "right"), movedPlace(to, change, "left"));
  };

  /** Writes what was edited in the field into a text that others have changed by `missed`. */
  private take(missed: readonly Delta[]): void {
    const { field } = this.bound;
    const caret = field.selectionEnd ?? field.value.length;
    const edit = editBetween(this.shown, field.value, caret, this.selected);
    this.selected = null;
    const end = this.write(edit, missed);
    const follow = (place: number): number => missed.reduce((now, change) => movedPlace(now, change, "left"), place);
    if (end === null) this.show(follow(Math.min(caret, edit.at)), follow(Math.min(caret, edit.at)));
    else if (field.value === this.look()) this.shown = field.value;
    else this.show(end, end);
  }

  /** Returns where the edit ends in the text, or null when it was not written. */
  private write(edit: Edit, missed: readonly Delta[]): number | null {
    const { text, host, maxLength = Number.POSITIVE_INFINITY } = this.bound;
    if (!host.canWrite || isGone(text)) return null;
    const gone = remaining(edit, missed);
    const inserted = firstLetters(edit.inserted, Math.max(maxLength - text.length + gone.length, 0));
    const at = missed.reduce((place, change) => movedPlace(place, change, "left"), edit.at);
    if (gone.length === 0 && inserted === "") return at;
    this.writing = true;
    try {
      act(host.writer, () => {
        // From the last one backwards, so that earlier places stay right.
        for (const { from, to } of runsOf(gone).reverse()) text.delete(from, to - from);
        if (inserted !== "") text.insert(at, inserted);
      });
    } finally {
      this.writing = false;
    }
    return at + inserted.length;
  }

  private selection(): ChangedSpan {
    const { selectionStart, selectionEnd } = this.bound.field;
    return { from: selectionStart ?? 0, to: selectionEnd ?? 0 };
  }

  private show(from: number, to: number): void {
    const { field, hasFocus } = this.bound;
    const direction = field.selectionDirection ?? "none";
    this.shown = this.look();
    if (field.value !== this.shown) field.value = this.shown;
    if (hasFocus()) field.setSelectionRange(Math.min(from, to), to, direction);
  }

  /** The text as the field can hold it, every place unchanged. */
  private look(): string {
    const words = wordsOf(this.bound.text);
    return this.bound.oneLine ? words.replace(/[\r\n]/g, " ") : words.replace(/\r(?=\n)/g, " ").replaceAll("\r", "\n");
  }
}

/** Places, in the current text, of the letters of `edit.removed` that are still there. */
function remaining(edit: Edit, missed: readonly Delta[]): number[] {
  const places: number[] = [];
  for (let i = 0; i < edit.removed; i++) {
    let place: number | null = edit.at + i;
    for (const change of missed) {
      if (place !== null) place = survives(place, change) ? movedPlace(place, change, "right") : null;
    }
    if (place !== null) places.push(place);
  }
  return places;
}

/** Joins ascending places into spans. */
function runsOf(places: readonly number[]): ChangedSpan[] {
  const runs: { from: number; to: number }[] = [];
  for (const place of places) {
    const last = runs.at(-1);
    if (last?.to === place) last.to++;
    else runs.push({ from: place, to: place + 1 });
  }
  return runs;
}

/** The words of a shared text; anything that is not a letter counts as one character, so that places agree. */
function wordsOf(text: Y.Text): string {
  const words = text.toString();
  if (words.length === text.length) return words;
  const ops: { insert?: unknown }[] = text.toDelta();
  return ops.map(({ insert }) => (typeof insert === "string" ? insert : "\uFFFC")).join("");
}

/** True for a text that was removed from the document. A root text has no parent and always stays. */
const isGone = (text: Y.Text): boolean => text._item?.deleted === true;
