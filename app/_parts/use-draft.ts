"use client";
/**
 * What is typed into a field of one plain value and not yet taken over. It stays when somebody else changes the value
 * meanwhile, and the field says so, before and after: the value of whoever leaves the field last counts, never unseen.
 */
import { type KeyboardEvent, useState } from "react";
import { undoKey } from "#app/_parts/commands/common.ts";

export interface FieldDraft {
  /** What the field holds. */
  readonly text: string;
  readonly isOpen: boolean;
  /** What somebody else has made of the value meanwhile, in a sentence; null when nobody has. */
  readonly meanwhile: string | null;
  /** On the field, for others to find: whose undo the keys for it are, and whether it is open. */
  readonly mark: { readonly "data-undo": "page" | "field"; readonly "data-draft"?: string };
  write(text: string): void;
  /** Closes it. True when it says something else than the value there is, so that it has to be written. */
  take(): boolean;
  /** Lets go of it: the value is shown again. */
  drop(): void;
  /** The keys for undo and redo while it is open: the browser's own would bring back figures that are nobody's. */
  letsGo(event: KeyboardEvent): boolean;
}

export function useDraft(shown: string): FieldDraft {
  const [typed, setTyped] = useState<{ readonly text: string; readonly from: string } | null>(null);
  /** What the taking over replaced that this person had not seen when they began. */
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
      ? `Somebody else has set ${inWords(shown)} meanwhile. Escape keeps theirs.`
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
