"use client";
/** The units the readings are typed in. Changing a unit leaves the numbers as typed. */
import { FORCE_UNITS, type ForceUnit } from "#lib/formats/formats.ts";
import { TRAVEL_UNITS, type TravelUnit } from "#lib/springs/readings.ts";
import { scaleWords } from "#lib/springs/scale-words.ts";
import { SelectField } from "../../_parts/choice.tsx";
import styles from "./readings.module.css";
import type { SheetDraft } from "./sheet-draft.ts";

const FORCE_WORDS = { N: "newtons", kgf: "kilograms", lbf: "pounds" } as const;
const TRAVEL_WORDS = { mm: "millimetres", cm: "centimetres", in: "inches" } as const;
const TRAVEL_OPTIONS = TRAVEL_UNITS.map((value) => ({ value, label: TRAVEL_WORDS[value] }));
const FORCE_OPTIONS = FORCE_UNITS.map((value) => ({ value, label: FORCE_WORDS[value] }));

type Units = Pick<SheetDraft, "travelUnit" | "forceUnit">;
interface UnitChoiceProps {
  readonly draft: Units;
  readonly onChange: (units: Units) => void;
}

export function UnitChoice({ draft, onChange }: UnitChoiceProps) {
  const { travelUnit, forceUnit } = draft;
  const about = scaleWords(forceUnit);
  return (
    <div className={styles.units}>
      <SelectField<TravelUnit>
        label="Travel in"
        value={travelUnit}
        options={TRAVEL_OPTIONS}
        onChoose={(chosen) => onChange({ travelUnit: chosen, forceUnit })}
      />
      <SelectField<ForceUnit>
        label="Force in"
        value={forceUnit}
        options={FORCE_OPTIONS}
        onChoose={(chosen) => onChange({ travelUnit, forceUnit: chosen })}
      />
      {about && <p className="quiet small">{about}</p>}
    </div>
  );
}
