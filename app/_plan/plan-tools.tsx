"use client";
/** Over all views of the plan: which of the views, add, the class's own panel, how tall a minute is, marks, keys. */
import { openKeyHelp } from "#app/_parts/key-help.tsx";
import { SCALES } from "../_rail/use-scale.ts";
import type { PlanSession } from "../_session/session.ts";
import styles from "./plan-tools.module.css";
import type { PlanView } from "./use-plan-view.ts";

interface RailToolsProps {
  readonly session: PlanSession;
  readonly scale: number;
  readonly step: (by: 1 | -1) => void;
  readonly openAdd: () => void;
  readonly openPaste: () => void;
  readonly openOrder: () => void;
  readonly openMarks: () => void;
  readonly openClass: () => void;
  readonly classOpen: boolean;
  readonly view: PlanView;
  readonly setView: (view: PlanView) => void;
}

export function RailTools(props: RailToolsProps) {
  const { session, openAdd, openPaste, openClass, classOpen } = props;
  return (
    <div className={`light ${styles.tools}`}>
      <Views {...props} />
      {session.canWrite && (
        <>
          <button type="button" className="button" onClick={openAdd}>
            Add
          </button>
          <button type="button" className="button" onClick={openPaste}>
            Paste a list
          </button>
          <button type="button" className="button" onClick={props.openOrder}>
            Fewer set-ups
          </button>
        </>
      )}
      <button type="button" className="button" aria-pressed={classOpen} onClick={openClass}>
        The class
      </button>
      <span className={styles.right}>
        {props.view === "rail" && <Height {...props} />}
        <button type="button" className="button button-quiet" onClick={props.openMarks}>
          Marks
        </button>
        <button type="button" className={`button button-quiet ${styles.keys}`} onClick={openKeyHelp}>
          Keys
        </button>
      </span>
    </div>
  );
}

const VIEWS: readonly { readonly view: PlanView; readonly words: string }[] = [
  { view: "rail", words: "Rail" },
  { view: "whole-class", words: "Whole class" },
  { view: "read-through", words: "Read-through" },
];

function Views({ view: open, setView }: Pick<RailToolsProps, "view" | "setView">) {
  return (
    <fieldset className="button-group">
      <legend className="visually-hidden">View of the plan</legend>
      {VIEWS.map(({ view, words }) => (
        <button key={view} type="button" className="button" aria-pressed={view === open} onClick={() => setView(view)}>
          {words}
        </button>
      ))}
    </fieldset>
  );
}

function Height({ scale, step }: Pick<RailToolsProps, "scale" | "step">) {
  return (
    <fieldset className="button-group">
      <legend className="visually-hidden">Height of the rail</legend>
      <button type="button" className="button" disabled={scale === SCALES[0]} onClick={() => step(-1)}>
        Shorter
      </button>
      <button type="button" className="button" disabled={scale === SCALES.at(-1)} onClick={() => step(1)}>
        Taller
      </button>
    </fieldset>
  );
}
