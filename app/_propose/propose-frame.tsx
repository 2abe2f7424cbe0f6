"use client";
/** What both dialogs for proposing have around what is edited: the effect beside it, the note, and sending. */
import { type ReactNode, type RefObject, useId } from "react";
import { Dialog } from "#app/_parts/dialog.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import type { Plan } from "#lib/plan/schema.ts";
import { partName } from "#lib/proposal/part-words.ts";
import { EffectTable } from "./effect-table.tsx";
import styles from "./propose.module.css";
import { PROPOSE } from "./propose-words.ts";
import type { Writing } from "./use-sending.ts";

interface ProposeFrameProps {
  readonly title: string;
  readonly plan: Plan;
  readonly writing: Writing;
  readonly wasKept: boolean;
  readonly onAgain: () => void;
  readonly note: string;
  readonly onNote: (note: string) => void;
  /** Why it cannot be sent as it is; null where it can. */
  readonly blocked: string | null;
  readonly onSend: () => void;
  readonly onClosed: () => void;
  readonly closer: RefObject<(() => void) | null>;
  readonly children: ReactNode;
}

export function ProposeFrame(props: ProposeFrameProps) {
  const { title, plan, writing, onClosed, closer, children } = props;
  return (
    <Dialog
      title={title}
      size="sheet"
      className={styles.sheet}
      onClose={onClosed}
      closer={closer}
      foot={<Foot {...props} />}
    >
      {props.wasKept && (
        <p className={styles.kept}>
          {PROPOSE.kept}{" "}
          <button type="button" className="text-button" onClick={props.onAgain}>
            {PROPOSE.again}
          </button>
        </p>
      )}
      <div className={styles.beside}>
        <div className={styles.editing}>{children}</div>
        <div className={styles.seen}>
          {writing.effect ? <EffectTable effect={writing.effect} /> : <p className="quiet">{PROPOSE.nothing}</p>}
          {writing.unfit.length > 0 && <LeftOut plan={plan} writing={writing} />}
        </div>
      </div>
      <Note {...props} />
    </Dialog>
  );
}

const MAX_NOTE = 2000;

function Note({ note, onNote }: Pick<ProposeFrameProps, "note" | "onNote">) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{PROPOSE.note}</label>
      <textarea id={id} rows={2} maxLength={MAX_NOTE} value={note} onChange={(event) => onNote(event.target.value)} />
    </div>
  );
}

function LeftOut({ plan, writing }: Pick<ProposeFrameProps, "plan" | "writing">) {
  return (
    <div className="notice" role="status">
      <p>{PROPOSE.leftOut}</p>
      <ul>
        {writing.unfit.map(({ part, why }) => (
          <li key={part.id}>
            {partName(plan, part)}: {why}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Foot({ writing, blocked, onSend }: ProposeFrameProps) {
  const { fitting, busy, problem } = writing;
  return (
    <>
      <ProblemLine say={problem ?? blocked} />
      <div className="spread">
        <p className="small quiet">{PROPOSE.nothingChanges}</p>
        <button
          type="button"
          className="button button-strong"
          aria-disabled={busy}
          disabled={fitting.length === 0 || blocked !== null}
          onClick={onSend}
        >
          {busy ? PROPOSE.sending : PROPOSE.send}
        </button>
      </div>
    </>
  );
}
