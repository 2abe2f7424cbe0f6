"use client";
/**
 * Paste a list: what a coach already has, read live, every doubt marked and answered in place, then put in as one act.
 * Nothing goes in while it is in doubt, unless the person leaves those rows out.
 */
import { useLayoutEffect, useRef, useState } from "react";
import type { PlanSession } from "#app/_plan/session.ts";
import { useSnapshot } from "#app/_plan/use-session.ts";
import { nameOf } from "#app/_plan/words.ts";
import type { PasteAnswer } from "#lib/paste/answers.ts";
import { Foot } from "./foot.tsx";
import styles from "./paste.module.css";
import { Preview } from "./preview.tsx";
import { putIn } from "./put-in.ts";
import { Source } from "./source.tsx";
import { usePaste } from "./use-paste.ts";

interface PasteDialogProps {
  readonly session: PlanSession;
  /** Told whether anything was put in. */
  readonly onClose: (put: boolean) => void;
}

export function PasteDialog({ session, onClose }: PasteDialogProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const after = plan.items.find((item) => item.id === snap.selectedId) ?? plan.items.at(-1);
  const afterId = after?.id ?? null;
  const paste = usePaste(session, plan, afterId);
  const [problem, setProblem] = useState<string | null>(null);
  const dialog = useOpenDialog();
  const put = useRef(false);
  const focusKept = useFocusKept(dialog, paste.rows);

  const answer = (keys: readonly string[], given: PasteAnswer) => {
    focusKept(keys[0]);
    paste.answer(keys, given);
  };
  const putAllIn = () => {
    const refused = putIn(session, afterId, paste.drafts);
    setProblem(refused);
    if (refused !== null) return;
    put.current = true;
    paste.forget();
    dialog.current?.close();
  };
  return (
    <dialog
      ref={dialog}
      className={styles.dialog}
      data-full={paste.rows.length > 0 || undefined}
      aria-labelledby="paste-title"
      onClose={() => onClose(put.current)}
    >
      <div className={styles.head}>
        <div>
          <h2 id="paste-title">Paste a list</h2>
          <p className="quiet">{after ? `Goes in after ${nameOf(plan, after)}.` : "The first of the class."}</p>
        </div>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <Source text={paste.text} setText={paste.setText} context={paste.context} />
      {!paste.reading.ok && (
        <p className="problem" role="alert">
          {paste.reading.say}
        </p>
      )}
      <Preview paste={paste} answer={answer} />
      <Foot
        paste={paste}
        now={snap.total}
        length={plan.lengthSeconds}
        problem={problem}
        onPut={putAllIn}
        onDoubt={() => focusDoubt(dialog.current)}
        onLeaveOut={(keys) => answer(keys, { row: { skip: true } })}
      />
    </dialog>
  );
}

function useOpenDialog() {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal();
    dialog.current?.querySelector<HTMLElement>("textarea")?.focus();
  }, []);
  return dialog;
}

/** An answer takes its own buttons away: the keyboard goes on to the next doubt, or to putting in when there is none. */
function useFocusKept(dialog: React.RefObject<HTMLDialogElement | null>, rows: unknown) {
  const from = useRef<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it runs when the rows have been drawn afresh
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

/** Focuses the first doubt from the row of `key` on, else after where the focus is, else the first of all. */
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
