"use client";
/**
 * Says that somebody else took out the item one was on, keeps its words at hand, and takes the keyboard, which would
 * otherwise fall to the page: what is typed on goes nowhere.
 */
import { useLayoutEffect, useRef, useState } from "react";
import { KeptWords } from "#app/_parts/kept-words.tsx";
import { takenOut } from "#lib/doc/taken-out.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { putBack } from "../_session/acts.ts";
import type { PlanSession } from "../_session/session.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import { focusField } from "./fields.ts";
import styles from "./taken-out.module.css";
import { type Loss, useTakenOut } from "./use-taken-out.ts";
import { lossWords, wordsOf } from "./words.ts";

export function TakenOutNotices({ session, snap }: { session: PlanSession; snap: SessionSnapshot }) {
  const { losses, close } = useTakenOut(session);
  // Until the page has followed, the item's own fields still stand there.
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
  const words = item ? wordsOf(session.getSnapshot().plan, item) : "";
  useLayoutEffect(() => {
    if (document.activeElement === document.body || document.activeElement === null) box.current?.focus();
  }, []);
  const restore = () => {
    putBack(session, loss.id);
    // The panel is drawn in the first frame, the script's editor after it.
    requestAnimationFrame(() => requestAnimationFrame(() => focusField(loss.field, loss.id)));
  };
  const leave = () => {
    onClose();
    document.querySelector<HTMLElement>('[role="listbox"] [tabindex="0"]')?.focus();
  };
  return (
    <section ref={box} tabIndex={-1} className={`notice ${styles.notice}`} aria-label={`Taken out: ${loss.name}`}>
      <p role="alert">{lossWords(loss.who, loss.name, { undone: loss.undone, words })}</p>
      {loss.draft && typed !== "" && (
        <p className="small">
          In “{loss.field}” you had typed {typed}; that was not taken over yet.
        </p>
      )}
      {words.trim() !== "" && <KeptWords label="Its words" words={words} />}
      <div className="acts">
        {session.canWrite && (
          <button type="button" className="button button-strong" onClick={restore}>
            Put back
          </button>
        )}
        <button type="button" className="button" onClick={leave}>
          Leave it out
        </button>
      </div>
    </section>
  );
}
