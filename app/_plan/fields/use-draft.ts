"use client";
/**
 * What is typed into a field of one plain value and not yet taken over. It stays when somebody else changes the value
 * meanwhile, and the field says so, before and after: the value of whoever leaves the field last counts, never unseen.
 */
import { useState } from "react";

export interface Draft {
  /** What the field holds. */
  readonly text: string;
  readonly isOpen: boolean;
  /** What somebody else has made of the value meanwhile, in a sentence; null when nobody has. */
  readonly meanwhile: string | null;
  /** On the field while it is open, for others to find. */
  readonly mark: { readonly "data-draft"?: string };
  write(text: string): void;
  /** Closes it. True when it says something else than the value there is, so that it has to be written. */
  take(): boolean;
  /** Lets go of it: the value is shown again. */
  drop(): void;
}

export function useDraft(shown: string): Draft {
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
    mark: typed === null ? {} : { "data-draft": "" },
    write: (next) => {
      setReplaced(null);
      setTyped({ text: next, from: typed?.from ?? shown });
    },
    take: () => {
      close(changed ? shown : null);
      return typed !== null && typed.text.trim() !== shown;
    },
    drop: () => close(null),
  };
}

const inWords = (value: string): string => (value === "" ? "nothing" : `“${value}”`);
