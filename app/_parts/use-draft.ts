"use client";
/**
 * What is typed into a field of one plain value and not yet written. It stays when somebody else changes the value
 * meanwhile, and the field says so before and after: the last person to leave the field wins, and never without knowing.
 */
import { type KeyboardEvent, useState } from "react";
import { undoKey } from "#app/_parts/commands/common.ts";

interface FieldDraft {
  /** What the field holds. */
  readonly text: string;
  readonly isOpen: boolean;
  /** What somebody else has set the value to meanwhile, in a sentence; null when nobody has. */
  readonly meanwhile: string | null;
  /** Attributes for the field: whose undo its keys are for, and whether a draft is open. */
  readonly mark: { readonly "data-undo": "page" | "field"; readonly "data-draft"?: string };
  write(text: string): void;
  /** Closes it. True when it differs from the present value, so that it has to be written. */
  take(): boolean;
  /** Discards it: the value is shown again. */
  drop(): void;
  /** The keys for undo and redo while it is open: the browser's own undo would bring back values that nobody set. */
  letsGo(event: KeyboardEvent): boolean;
}

export function useDraft(shown: string): FieldDraft {
  const [typed, setTyped] = useState<{ readonly text: string; readonly from: string } | null>(null);
  /** A value that writing replaced and that this person had not seen when they began to type. */
  const [replaced, setReplaced] = useState<string | null>(null);
  const text = typed?.text ?? shown;
  const changed = typed !== null && typed.from !== shown && typed.text.trim() !== shown;
  const close = (left: string | null) => {
    setTyped(null);
    setReplaced(left);
  };
  return {
    text,
    isOpen: typed !== null,
    meanwhile: changed
      ? `Somebody else has set ${inWords(shown)} meanwhile. Press Escape to keep theirs.`
      : replaced !== null
        ? `This replaced ${inWords(replaced)}, set by somebody else while you typed.`
        : null,
    mark: typed === null ? { "data-undo": "page" } : { "data-undo": "field", "data-draft": "" },
    write: (next) => {
      setReplaced(null);
      const from = typed?.from ?? shown;
      setTyped(next === shown && from === shown ? null : { text: next, from });
    },
    take: () => {
      close(changed ? shown : null);
      return typed !== null && typed.text.trim() !== shown;
    },
    drop: () => close(null),
    letsGo: (event) => {
      const way = undoKey(event);
      if (way === null || typed === null) return false;
      event.preventDefault();
      if (way === "undo") close(null);
      return way === "undo";
    },
  };
}

const inWords = (value: string): string => (value === "" ? "nothing" : `“${value}”`);
