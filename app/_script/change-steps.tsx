"use client";
/** The change into the item beside its set-up lines, step by step: what is said of it, what is not, and one press to write it. */
import type { Editor } from "@tiptap/core";
import { useMemo, useRef } from "react";
import { PlanButton } from "#app/_session/page-acts.tsx";
import type { HeardAct } from "#lib/acts/plan-acts.ts";
import type { StepState } from "#lib/acts/steps.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import styles from "./change-steps.module.css";
import { allSaidWords, besidesWords, STEPS_NAME, stepStateWords, writeSetUpWords } from "./script-words.ts";
import { showWords } from "./show-words.ts";
import { type SetupOffer, type StepsView, type StepView, stepsView } from "./steps-view.ts";

interface Props {
  readonly plan: Plan;
  readonly item: MoveItem;
  readonly editor: Editor | null;
  readonly readOnly: boolean;
}

export function ChangeSteps({ plan, item, editor, readOnly }: Props) {
  const view = useMemo(() => stepsView(plan, item.id), [plan, item.id]);
  const box = useRef<HTMLElement>(null);
  if (!view) return null;
  const show = (heard: HeardAct) => {
    if (editor && !editor.isDestroyed) showWords(editor, heard);
  };
  return (
    <section ref={box} tabIndex={-1} className={styles.change} aria-label={STEPS_NAME}>
      {view.allSaid ? (
        <details className={styles.all}>
          <summary>
            <span className={styles.step} data-state="told">
              <Mark state="told" /> {allSaidWords(view.steps.length)}
            </span>
          </summary>
          <Steps view={view} onShow={show} />
        </details>
      ) : (
        <Steps view={view} onShow={show} />
      )}
      {view.offer && !readOnly && (
        // The button goes with what it wrote, so the focus stays here.
        <div className={styles.offer} onClickCapture={() => box.current?.focus()}>
          <PlanButton command="write-set-up">{writeSetUpWords(view.offer)}</PlanButton>
          <Offered offer={view.offer} />
        </div>
      )}
    </section>
  );
}

function Offered({ offer }: { readonly offer: SetupOffer }) {
  return (
    <div className={styles.preview}>
      {offer.note && <p>{offer.note}</p>}
      {offer.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

interface StepsProps {
  readonly view: StepsView;
  readonly onShow: (heard: HeardAct) => void;
}

function Steps({ view, onShow }: StepsProps) {
  return (
    <>
      <ol className={styles.steps}>
        {view.steps.map((step) => (
          <li key={step.key}>
            <Pressed heard={step.heard} state={step.state} onShow={onShow}>
              <Step step={step} />
            </Pressed>
          </li>
        ))}
      </ol>
      {view.besides.length > 0 && (
        <ul className={styles.besides}>
          {view.besides.map((heard) => (
            <li
              key={`${heard.line} ${heard.from} ${heard.act.act} ${heard.act.spring ?? ""}`}
              data-state="contradicted"
            >
              <Pressed heard={heard} state="contradicted" onShow={onShow}>
                <Mark state="contradicted" />{" "}
                {besidesWords(heard, view.steps.length > 0 && view.steps.every(({ state }) => state !== "missing"))}
              </Pressed>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** What is seen by its mark is read aloud in words; what is seen is not read a second time. */
function Step({ step: { words, state, heard } }: { readonly step: StepView }) {
  const says = stepStateWords(state, heard?.said ?? null);
  return (
    <>
      <span className="visually-hidden">{`${words}: ${says}`}</span>
      <Mark state={state} />
      <span aria-hidden="true">
        {words}
        {state !== "told" && state !== "missing" && <span className={styles.says}>: {says}</span>}
      </span>
    </>
  );
}

interface PressedProps extends Pick<StepsProps, "onShow"> {
  readonly heard: HeardAct | null;
  readonly state: StepState;
  readonly children: React.ReactNode;
}

/** A button where the script has words to show for it: a pause before the move has them elsewhere. */
function Pressed({ heard, state, onShow, children }: PressedProps) {
  const looks = { className: styles.step, "data-state": state };
  if (!heard || heard.line < 0) return <span {...looks}>{children}</span>;
  return (
    <button type="button" {...looks} onClick={() => onShow(heard)}>
      {children}
    </button>
  );
}

const MARKS: Readonly<Record<StepState, string>> = {
  told: "M3 8.5l3.2 3.2L13 4.8",
  missing: "M8 3a5 5 0 1 0 0 10a5 5 0 1 0 0-10",
  "wrong-order": "M5 13V3.5M2 6.5l3-3l3 3M11 3v9.5M8 9.5l3 3l3-3",
  contradicted: "M4 4l8 8M12 4l-8 8",
  unsure: "M5.5 6a2.5 2.5 0 1 1 3.6 2.2Q8 8.8 8 10M8 12.6v.4",
};

const Mark = ({ state }: { readonly state: StepState }) => (
  <svg className={styles.mark} viewBox="0 0 16 16" aria-hidden="true">
    <path d={MARKS[state]} />
  </svg>
);
