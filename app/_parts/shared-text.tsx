"use client";
/**
 * The one field for shared texts, in plans and months alike: everybody's letters stay, the caret stays with its words,
 * composing is not interrupted, undo is the page's. React only makes the element; the binding fills it.
 */
import { type InputHTMLAttributes, type RefObject, useLayoutEffect, useRef } from "react";
import type * as Y from "yjs";
import { TextBinding, type TextHost } from "#lib/client/text-binding.ts";

/** A page's session. */
interface SharedTextHost extends TextHost {
  /** The page's undo and redo, where it has them: the browser's own undo knows nothing of other people's letters. */
  undo?(): void;
  redo?(): void;
}

interface SharedTextProps
  extends Pick<InputHTMLAttributes<HTMLInputElement>, "id" | "className" | "placeholder" | "maxLength"> {
  readonly host: SharedTextHost;
  readonly text: Y.Text;
  readonly readOnly: boolean;
  /** For a field without a label element. */
  readonly label?: string;
  /** Several lines instead of one. */
  readonly rows?: number;
}

export function SharedText({ host, text, readOnly, label, rows, ...rest }: SharedTextProps) {
  const ref = useRef<HTMLInputElement | HTMLTextAreaElement>(null);
  const { maxLength } = rest;
  useLayoutEffect(() => {
    if (ref.current) return bindField(ref.current, text, host, maxLength);
  }, [text, host, maxLength]);
  const common = { ...rest, "aria-label": label, readOnly, "data-shared": "" };
  if (rows !== undefined) return <textarea ref={ref as RefObject<HTMLTextAreaElement>} rows={rows} {...common} />;
  return <input ref={ref as RefObject<HTMLInputElement>} type="text" {...common} />;
}

/** Undo or redo asked of the browser: from its menu, or by shaking a phone. */
function historyAct(host: SharedTextHost, inputType: string): (() => void) | undefined {
  if (inputType === "historyUndo" && host.undo) return () => host.undo?.();
  if (inputType === "historyRedo" && host.redo) return () => host.redo?.();
}

/** Returns what releases the field. */
function bindField(
  field: HTMLInputElement | HTMLTextAreaElement,
  text: Y.Text,
  host: SharedTextHost,
  maxLength: number | undefined,
): () => void {
  const hasFocus = () => field.ownerDocument.activeElement === field;
  const oneLine = field instanceof HTMLInputElement;
  const binding = new TextBinding({ field, text, host, oneLine, maxLength, hasFocus });
  const listening = new AbortController();
  const on = (type: string, listener: (event: Event) => void) =>
    field.addEventListener(type, listener, { signal: listening.signal });
  on("beforeinput", (event) => {
    binding.beforeEdit();
    const back = event instanceof InputEvent ? historyAct(host, event.inputType) : undefined;
    if (back) event.preventDefault();
    back?.();
  });
  on("input", () => binding.edited());
  on("compositionstart", () => binding.compose());
  on("compositionend", () => binding.composed());
  on("blur", () => binding.composed());
  return () => {
    listening.abort();
    binding.release();
  };
}
