"use client";
/** Where the move is done and how the body stands: what a change of set-up is counted from. */
import type { ChoiceKey, MoveDraft } from "#lib/library/draft.ts";
import { SIDES_WORDS, STATION_WORDS } from "#lib/library/move-words.ts";
import { tagWords } from "#lib/plan/format.ts";
import { FACINGS, FEET, HANDS, MOVE_SIDES, PATTERNS, POSITIONS, STATIONS } from "#lib/plan/schema.ts";
import styles from "./form.module.css";
import { OneOf, SelectInput } from "./form-fields.tsx";
import type { MoveForm } from "./use-move-form.ts";

const plain = <T extends string>(values: readonly T[]): (readonly [T, string])[] =>
  values.map((value) => [value, tagWords(value)]);

/** What every choice of the form needs: its place, its value, its fault, and how it is set. */
export function choiceOf<K extends ChoiceKey>(form: MoveForm, key: K) {
  return {
    place: key,
    value: form.draft[key],
    fault: form.faultAt(key),
    onChange: (value: MoveDraft[K]) => form.set({ [key]: value }, key),
  };
}

export function SetupPart({ form }: { readonly form: MoveForm }) {
  return (
    <div className={styles.grid}>
      <SelectInput {...choiceOf(form, "position")} label="Position" options={plain(POSITIONS)} />
      <SelectInput
        {...choiceOf(form, "station")}
        label="Station"
        options={STATIONS.map((station) => [station, STATION_WORDS[station]])}
      />
      <SelectInput {...choiceOf(form, "facing")} label="Facing" options={plain(FACINGS)} />
      <SelectInput {...choiceOf(form, "hands")} label="Hands" options={plain(HANDS)} />
      <SelectInput {...choiceOf(form, "feet")} label="Feet" options={plain(FEET)} />
      <SelectInput {...choiceOf(form, "pattern")} label="Pattern" options={plain(PATTERNS)} />
      <div className={styles.wide}>
        <OneOf
          {...choiceOf(form, "sides")}
          label="Sides"
          options={MOVE_SIDES.map((sides) => [sides, SIDES_WORDS[sides]])}
        />
      </div>
    </div>
  );
}
