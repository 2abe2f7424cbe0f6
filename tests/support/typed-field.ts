/** A text field as in a browser, without one: what keys do to its value and selection. */
import type * as Y from "yjs";
import { TextBinding, type TextField } from "#lib/client/text-binding.ts";

export class TypedField implements TextField {
  value = "";
  selectionStart = 0;
  selectionEnd = 0;
  selectionDirection: TextField["selectionDirection"] = "none";
  readonly binding: TextBinding;
  readonly host: { writer: { doc: Y.Doc; origin: string }; canWrite: boolean };

  constructor(
    readonly text: Y.Text,
    options: { oneLine?: boolean; maxLength?: number } = {},
  ) {
    if (!text.doc) throw new Error("a text of a document");
    this.host = { writer: { doc: text.doc, origin: "keys" }, canWrite: true };
    const { oneLine = false, maxLength } = options;
    this.binding = new TextBinding({ field: this, text, host: this.host, oneLine, maxLength, hasFocus: () => true });
  }

  setSelectionRange(from: number, to: number, direction: TextField["selectionDirection"] = "none"): void {
    this.selectionStart = Math.min(from, this.value.length);
    this.selectionEnd = Math.min(to, this.value.length);
    this.selectionDirection = direction;
  }

  caret(at: number): void {
    this.setSelectionRange(at, at);
  }

  /** Types or pastes; with "", cuts. */
  type(words: string): void {
    this.binding.beforeEdit();
    this.put(words);
    this.binding.edited();
  }

  backspace(): void {
    this.binding.beforeEdit();
    if (this.selectionStart === this.selectionEnd) this.selectionStart = Math.max(0, this.selectionStart - 1);
    this.put("");
    this.binding.edited();
  }

  /** A step of composing: what was composed so far is replaced. */
  composeTo(words: string, replacing: number): void {
    this.binding.compose();
    this.selectionStart = this.selectionEnd - replacing;
    this.binding.beforeEdit();
    this.put(words);
    this.binding.edited();
  }

  private put(words: string): void {
    this.value = this.value.slice(0, this.selectionStart) + words + this.value.slice(this.selectionEnd);
    this.caret(this.selectionStart + words.length);
  }
}
