"use client";
/**
 * Paste a list: a list that a coach already has is read as it is typed, every doubt is marked and answered in place, and the
 * items are added in one act. Rows in doubt are never added: they are answered or left out.
 */
import { useLayoutEffect, useRef } from "react";
import { Dialog } from "#app/_parts/dialog.tsx";
import { nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { Foot } from "./foot.tsx";
import styles from "./paste.module.css";
import { PastePreview } from "./paste-preview.tsx";
import { whereWords } from "./paste-words.ts";
import { putIn } from "./put-in.ts";
import { Source } from "./source.tsx";
import { type Paste, usePaste } from "./use-paste.ts";

interface PasteDialogProps {
  readonly session: PlanSession;
  /** Called at once, while the last of what was added is chosen; closes the dialog too. */
  readonly onAdded: () => void;
  readonly onClose: () => void;
}

export function PasteDialog({ session, onAdded, onClose }: PasteDialogProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const after = plan.items.find((item) => item.id === snap.selectedId) ?? plan.items.at(-1);
  const afterId = after?.id ?? null;
  const paste = usePaste(session, plan, afterId);
  const dialog = useRef<HTMLDialogElement>(null);
  const answer = useAnswers(dialog, paste);
  const added = () => {
    paste.forget();
    onAdded();
  };
  return (
    <Dialog
      title="Paste a list"
      element={dialog}
      className={paste.rows.length > 0 ? `${styles.dialog} ${styles.full}` : styles.dialog}
      onClose={onClose}
    >
      <p className="quiet">{whereWords(after && nameOf(plan, after))}</p>
      <Source text={paste.text} setText={paste.setText} context={paste.context} />
      {!paste.reading.ok && <Problem say={paste.reading.say} />}
      <PastePreview paste={paste} answer={answer} />
      <Foot
        paste={paste}
        now={snap.total}
        length={plan.lengthSeconds}
        putIn={() => putIn(session, afterId, paste.drafts)}
        onPut={added}
        onDoubt={() => focusDoubt(dialog.current)}
        onLeaveOut={(keys) => answer(keys, { row: { skip: true } })}
      />
    </Dialog>
  );
}

const Problem = ({ say }: { readonly say: string }) => (
  <p className="problem" role="alert">
    {say}
  </p>
);

/** Answers rows of the list and keeps the focus in the dialog. */
function useAnswers(dialog: React.RefObject<HTMLDialogElement | null>, paste: Paste): Paste["answer"] {
  const focusKept = useFocusKept(dialog, paste.rows);
  return (keys, given) => {
    focusKept(keys[0]);
    paste.answer(keys, given);
  };
}

/** An answer removes its own buttons, so the focus moves to the next doubt, or to the button that adds the items. */
function useFocusKept(dialog: React.RefObject<HTMLDialogElement | null>, rows: unknown) {
  const from = useRef<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it runs when the rows have been drawn again
  useLayoutEffect(() => {
    const key = from.current;
    from.current = null;
    if (key === null || dialog.current === null) return;
    const focused = document.activeElement;
    if (focused !== dialog.current && dialog.current.contains(focused)) return;
    focusDoubt(dialog.current, key);
  }, [rows]);
  return (key: string | undefined) => {
    from.current = key ?? null;
  };
}

/** Focuses the first doubt from the row of `key` on, else the next after the focus, else the first of all. */
function focusDoubt(dialog: HTMLElement | null, key?: string): void {
  if (!dialog) return;
  const doubts = [...dialog.querySelectorAll<HTMLElement>("[data-doubt]")];
  const row = [...dialog.querySelectorAll<HTMLElement>("[data-row]")].find((element) => element.dataset.row === key);
  const from: Node | null | undefined = row ?? document.activeElement;
  const later = doubts.find((doubt) => {
    if (!from || from === document.body || doubt.contains(from)) return false;
    return (
      (from.compareDocumentPosition(doubt) & (Node.DOCUMENT_POSITION_FOLLOWING | Node.DOCUMENT_POSITION_CONTAINED_BY)) >
      0
    );
  });
  const target = later ?? doubts[0];
  (target?.querySelector<HTMLElement>("button, input") ?? dialog.querySelector<HTMLElement>("[data-put]"))?.focus();
}
