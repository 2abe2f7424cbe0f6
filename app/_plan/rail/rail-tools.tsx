"use client";
/** Over the rail: add, the class as a whole, how tall a minute is, the keys. */
import type { PlanSession } from "../session.ts";
import styles from "./rail-tools.module.css";
import { SCALES } from "./use-scale.ts";

interface RailToolsProps {
  readonly session: PlanSession;
  readonly scale: number;
  readonly step: (by: 1 | -1) => void;
  readonly openAdd: () => void;
  readonly openHelp: () => void;
  readonly openClass: () => void;
  readonly classOpen: boolean;
}

export function RailTools({ session, scale, step, openAdd, openHelp, openClass, classOpen }: RailToolsProps) {
  return (
    <div className={styles.tools}>
      {session.canWrite && (
        <button type="button" className="button" onClick={openAdd}>
          Add
        </button>
      )}
      <button type="button" className="button" aria-pressed={classOpen} onClick={openClass}>
        The class
      </button>
      <fieldset className={styles.scale}>
        <legend className="visually-hidden">Height of the rail</legend>
        <button type="button" className="button" disabled={scale === SCALES[0]} onClick={() => step(-1)}>
          Shorter
        </button>
        <button type="button" className="button" disabled={scale === SCALES.at(-1)} onClick={() => step(1)}>
          Taller
        </button>
      </fieldset>
      <button type="button" className={`button button-quiet ${styles.keys}`} onClick={openHelp}>
        Keys
      </button>
    </div>
  );
}
