"use client";
/** A field bound to a shared text: everybody's letters stay, the caret stays with its words, composing is not broken. */
import { type InputHTMLAttributes, type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import type * as Y from "yjs";
import { setText } from "#lib/doc/write.ts";
import type { PlanSession } from "../session.ts";
import { mergeText, movedCaret } from "./merge-text.ts";

type Field = HTMLInputElement | HTMLTextAreaElement;

interface SharedTextProps
  extends Pick<InputHTMLAttributes<HTMLInputElement>, "id" | "className" | "placeholder" | "maxLength"> {
  readonly session: PlanSession;
  readonly text: Y.Text;
  readonly readOnly: boolean;
  readonly label: string;
  /** Several lines instead of one. */
  readonly rows?: number;
}

export function SharedText({ session, text, readOnly, label, rows, ...rest }: SharedTextProps) {
  const ref = useRef<Field>(null);
  const bound = useSharedText(session, text, ref);
  const common = {
    ...rest,
    "aria-label": label,
    readOnly,
    value: bound.value,
    "data-shared": "",
    onChange: (event: React.ChangeEvent<Field>) => bound.type(event.target.value),
    onCompositionStart: bound.compose,
    onCompositionEnd: (event: React.CompositionEvent<Field>) => bound.composed(event.currentTarget.value),
  };
  if (rows !== undefined) return <textarea ref={ref as RefObject<HTMLTextAreaElement>} rows={rows} {...common} />;
  return <input ref={ref as RefObject<HTMLInputElement>} type="text" {...common} />;
}

function useSharedText(session: PlanSession, text: Y.Text, ref: RefObject<Field | null>) {
  const [value, setValue] = useState(() => text.toString());
  /** The shared text as it was when composing began; null while nothing is composed. */
  const base = useRef<string | null>(null);
  const caret = useRef<[number, number] | null>(null);

  useEffect(() => {
    const take = () => {
      if (base.current !== null) return;
      const after = text.toString();
      setValue((before) => {
        const field = ref.current;
        if (field && document.activeElement === field && before !== after) {
          const [from, to] = [field.selectionStart ?? 0, field.selectionEnd ?? 0];
          caret.current = [movedCaret(before, after, from), movedCaret(before, after, to)];
        }
        return after;
      });
    };
    take();
    text.observe(take);
    return () => text.unobserve(take);
  }, [text, ref]);

  useLayoutEffect(() => {
    if (caret.current) ref.current?.setSelectionRange(...caret.current);
    caret.current = null;
  });

  return {
    value,
    type: (next: string) => {
      setValue(next);
      if (base.current === null) setText(session.writer, text, next);
    },
    compose: () => {
      base.current = text.toString();
    },
    composed: (typed: string) => {
      const from = base.current ?? text.toString();
      base.current = null;
      const merged = mergeText(from, typed, text.toString());
      setValue(merged);
      setText(session.writer, text, merged);
    },
  };
}
