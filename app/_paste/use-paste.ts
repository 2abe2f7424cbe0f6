"use client";
/**
 * One list being read: its text, what a person has answered, and what the rows become. Both survive the closing of the
 * dialog while the page is open.
 */
import { useDeferredValue, useMemo, useState } from "react";
import type { PlanSession } from "#app/_plan/session.ts";
import { classClock } from "#lib/clock/clock.ts";
import { type Answers, NO_ANSWERS, type PasteAnswer, withAnswer } from "#lib/paste/answers.ts";
import { draftsToItems, planWith } from "#lib/paste/drafts.ts";
import { judgeRows } from "#lib/paste/judge.ts";
import type { ItemDraft, JudgedRow } from "#lib/paste/judged.ts";
import { readPaste } from "#lib/paste/read-paste.ts";
import type { PasteContext, PasteReading } from "#lib/paste/types.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { pasteContext } from "./context.ts";

interface Kept {
  readonly text: string;
  readonly answers: Answers;
}
const NOTHING: Kept = { text: "", answers: NO_ANSWERS };
const keptLists = new WeakMap<PlanSession, Kept>();

export interface Paste {
  readonly text: string;
  readonly setText: (text: string) => void;
  /** The text has changed and is still being read. */
  readonly behind: boolean;
  readonly reading: PasteReading;
  readonly rows: readonly JudgedRow[];
  /** Items of the rows that are ready. */
  readonly drafts: readonly ItemDraft[];
  readonly context: PasteContext;
  /** Seconds of the whole class with these items in it. */
  readonly totalWith: number;
  readonly answer: (keys: readonly string[], answer: PasteAnswer) => void;
  readonly forget: () => void;
}

/** `afterId`: where the items will stand; null at the top. */
export function usePaste(session: PlanSession, plan: Plan, afterId: string | null): Paste {
  const [kept, setKept] = useState(() => keptLists.get(session) ?? NOTHING);
  const text = useDeferredValue(kept.text);
  const { studio } = session;
  const context = useMemo(() => pasteContext(studio, plan), [studio, plan]);
  const reading = useMemo(() => readPaste(text, context), [text, context]);
  const rows = useMemo(
    () => (reading.ok ? judgeRows(reading.rows, kept.answers, context) : []),
    [reading, kept.answers, context],
  );
  const drafts = useMemo(() => rows.flatMap((row) => row.drafts), [rows]);
  const totalWith = useMemo(() => {
    let n = 0;
    const items = draftsToItems(drafts, () => `pasted-${n++}`);
    return classClock(planWith(plan, context.moves, { afterId, items })).total;
  }, [drafts, plan, context, afterId]);

  // Each change builds on the newest state, so that rows may keep an older handler and need not be drawn again.
  const keep = (change: (before: Kept) => Kept) =>
    setKept((before) => {
      const next = change(before);
      keptLists.set(session, next);
      return next;
    });
  return {
    text: kept.text,
    setText: (next) => keep((before) => ({ ...before, text: next })),
    behind: text !== kept.text,
    reading,
    rows,
    drafts,
    context,
    totalWith,
    answer: (keys, answer) => {
      keep((before) => ({
        ...before,
        answers: keys.reduce((answers, key) => withAnswer(answers, key, answer), before.answers),
      }));
    },
    forget: () => {
      // At once: the dialog may be gone before its state is worked out again.
      keptLists.delete(session);
      setKept(NOTHING);
    },
  };
}
