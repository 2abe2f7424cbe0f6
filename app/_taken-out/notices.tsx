"use client";
/**
 * Says that somebody else took out the item one was on, and shows its words. It takes the focus: otherwise what one goes on
 * typing would reach the page as keys.
 */
import { useLayoutEffect, useRef, useState } from "react";
import { KeptWords } from "#app/_parts/kept-words.tsx";
import { takenOut } from "#lib/doc/taken-out.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { putBack } from "../_session/acts.ts";
import { TAKEN_OUT_LIST } from "../_session/item-words.ts";
import type { PlanSession } from "../_session/session.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import { focusField } from "./panel-fields.ts";
import styles from "./taken-out.module.css";
import { itemWordsAsText, lossWords } from "./taken-out-words.ts";
import { type Loss, useTakenOut } from "./use-taken-out.ts";

export function TakenOutNotices({ session, snap }: { session: PlanSession; snap: SessionSnapshot }) {
  const { losses, close } = useTakenOut(session);
  // Until the page is drawn again, the fields of the item are still there.
  const shown = losses.filter(({ id }) => itemById(snap.plan, id) === undefined);
  return shown.map((loss) => <Notice key={loss.id} session={session} loss={loss} onClose={() => close(loss.id)} />);
}

interface NoticeProps {
  readonly session: PlanSession;
  readonly loss: Loss;
  readonly onClose: () => void;
}

function Notice({ session, loss, onClose }: NoticeProps) {
  const box = useRef<HTMLElement>(null);
  const [typed] = useState(() => loss.draft?.value.trim() ?? "");
  const item = takenOut(session.doc, loss.id)?.item;
  const words = item ? itemWordsAsText(session.getSnapshot().plan, item) : "";
  useLayoutEffect(() => {
    if (document.activeElement === document.body || document.activeElement === null) box.current?.focus();
  }, []);
  const restore = () => {
    putBack(session, loss.id);
    // The panel is drawn in the first frame, the script's editor in the second.
    requestAnimationFrame(() => requestAnimationFrame(() => focusField(loss.field, loss.id)));
  };
  const leave = () => {
    onClose();
    document.querySelector<HTMLElement>('[role="listbox"] [tabindex="0"]')?.focus();
  };
  return (
    <section
      ref={box}
      tabIndex={-1}
      className={`notice ${styles.notice}`}
      aria-label={`${TAKEN_OUT_LIST}: ${loss.name}`}
    >
      <p role="alert">{lossWords(loss.who, loss.name, { undone: loss.undone, words, writes: session.canWrite })}</p>
      {loss.draft && typed !== "" && (
        <p className="small">
          You had typed {typed} into “{loss.field}”. That was not saved yet.
        </p>
      )}
      {words.trim() !== "" && <KeptWords label="Words of the item" words={words} />}
      <NoticeActs onRestore={session.canWrite ? restore : null} onLeave={leave} />
    </section>
  );
}

interface NoticeActsProps {
  /** Null for somebody who cannot edit the plan. */
  readonly onRestore: (() => void) | null;
  readonly onLeave: () => void;
}

const NoticeActs = ({ onRestore, onLeave }: NoticeActsProps) => (
  <div className="acts">
    {onRestore && (
      <button type="button" className="button button-strong" onClick={onRestore}>
        Put back
      </button>
    )}
    <button type="button" className="button" onClick={onLeave}>
      Close
    </button>
  </div>
);
