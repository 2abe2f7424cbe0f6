"use client";
/** What the move trains: a prime mover counts 1, a helper 0.5, and any share from 0 to 1 may be typed. */
import { useId } from "react";
import { tagWords } from "#lib/plan/format.ts";
import { GROUPS, type Group, SPINE_DIRECTIONS } from "#lib/plan/schema.ts";
import styles from "./form.module.css";
import { Below, fieldId, ManyOf } from "./form-fields.tsx";
import type { MoveFormState } from "./use-move-form.ts";

const QUICK = [
  ["", "no"],
  ["0.5", "helper"],
  ["1", "prime mover"],
] as const;

export function MusclesPart({ form }: { readonly form: MoveFormState }) {
  const { muscles, spine } = form.draft;
  const set = (group: Group, weight: string) => {
    const { [group]: _before, ...others } = muscles;
    form.set({ muscles: weight === "" ? others : { ...others, [group]: weight } }, `muscles.${group}`);
  };
  return (
    <>
      <p className="quiet small">A prime mover counts 1, a helper 0.5. You can type any share from 0 to 1.</p>
      <div className={styles.muscles} id={fieldId("muscles")} tabIndex={-1}>
        {GROUPS.map((group) => (
          <Muscle
            key={group}
            group={group}
            weight={muscles[group] ?? ""}
            fault={form.faultAt(`muscles.${group}`)}
            onChange={(weight) => set(group, weight)}
          />
        ))}
      </div>
      <ManyOf
        place="spine"
        label="What the spine does"
        chosen={spine}
        options={SPINE_DIRECTIONS.map((direction) => [direction, tagWords(direction)])}
        onChange={(chosen) => form.set({ spine: chosen }, "spine")}
      />
    </>
  );
}

interface MuscleProps {
  readonly group: Group;
  readonly weight: string;
  readonly fault: string | undefined;
  readonly onChange: (weight: string) => void;
}

function Muscle({ group, weight, fault, onChange }: MuscleProps) {
  const name = useId();
  const id = fieldId(`muscles.${group}`);
  const words = tagWords(group);
  return (
    <fieldset className={styles.muscle} data-on={weight !== "" || undefined}>
      <legend className="visually-hidden">{words}</legend>
      <span className={styles.group} aria-hidden="true">
        {words}
      </span>
      <div className="options">
        {QUICK.map(([value, label]) => (
          <label key={value} data-on={value === weight || undefined} data-not={value === "" || undefined}>
            <input type="radio" name={name} checked={value === weight} onChange={() => onChange(value)} />
            {label}
          </label>
        ))}
      </div>
      <input
        id={id}
        className={styles.weight}
        inputMode="decimal"
        autoComplete="off"
        value={weight}
        aria-label={`Share of ${words}, 0 to 1`}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        onChange={(event) => onChange(event.target.value)}
      />
      <Below id={id} fault={fault} />
    </fieldset>
  );
}
