"use client";
/** The units the readings are typed in. Changing a unit leaves the numbers as typed. */
import { useId } from "react";
import { FORCE_UNITS, NEWTONS_PER_KGF, TRAVEL_UNITS } from "#lib/springs/readings.ts";
import styles from "./readings.module.css";
import type { SheetDraft } from "./sheet-draft.ts";

const FORCE_WORDS = { N: "newtons", kgf: "kilograms" } as const;
const TRAVEL_WORDS = { mm: "millimetres", cm: "centimetres" } as const;

interface UnitChoiceProps {
  readonly draft: SheetDraft;
  readonly onChange: (draft: SheetDraft) => void;
}

export function UnitChoice({ draft, onChange }: UnitChoiceProps) {
  const [travel, force] = [useId(), useId()];
  return (
    <div className={styles.units}>
      <div className="field">
        <label htmlFor={travel}>Travel in</label>
        <select
          id={travel}
          value={draft.travelUnit}
          onChange={(event) => onChange({ ...draft, travelUnit: event.target.value === "mm" ? "mm" : "cm" })}
        >
          {TRAVEL_UNITS.map((unit) => (
            <option key={unit} value={unit}>
              {TRAVEL_WORDS[unit]}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor={force}>Force in</label>
        <select
          id={force}
          value={draft.forceUnit}
          onChange={(event) => onChange({ ...draft, forceUnit: event.target.value === "N" ? "N" : "kgf" })}
        >
          {FORCE_UNITS.map((unit) => (
            <option key={unit} value={unit}>
              {FORCE_WORDS[unit]}
            </option>
          ))}
        </select>
      </div>
      {draft.forceUnit === "kgf" && (
        <p className="quiet small">
          A scale in kilograms shows kilograms-force. They are converted at 1 kgf = {NEWTONS_PER_KGF} N.
        </p>
      )}
    </div>
  );
}
