"use client";
/** A correction of the figure's pose, where what is worked out from the other fields is wrong. */
import { useState } from "react";
import { smallUnit } from "#lib/formats/units.ts";
import { CORRECTION_KEYS, CORRECTION_WORDS, isLength, PHASES, type Phase } from "#lib/library/correction-words.ts";
import { NO_CORRECTION } from "#lib/library/draft.ts";
import { sameData } from "#lib/plan/same-data.ts";
import styles from "./form.module.css";
import { fieldId, TextInput } from "./form-fields.tsx";
import type { MoveFormState } from "./use-move-form.ts";

const PHASE_WORDS: Readonly<Record<Phase, string>> = { start: "At the start", end: "At the end" };

export function CorrectionPart({ form }: { readonly form: MoveFormState }) {
  const { draft, set } = form;
  const isNone = sameData(draft.figure, NO_CORRECTION);
  // From then on: emptying the last field would fold it away. What was typed earlier in this tab comes after the page.
  const [wasCorrected, setCorrected] = useState(!isNone);
  if (!isNone && !wasCorrected) setCorrected(true);
  const held = draft.tempo === "held";
  return (
    <details className={styles.correction} id={fieldId("figure")} open={wasCorrected || undefined}>
      <summary>Correct the figure</summary>
      <p className="quiet small">
        Only the drawing changes: hands and feet stay where they hold, and nothing is counted from it. A value below 0
        goes the other way: back, away from the working side, towards the front, down.
      </p>
      {PHASES.filter((phase) => !held || phase === "end" || !sameData(draft.figure.start, {})).map((phase) => (
        <PhaseFields key={phase} form={form} phase={phase} />
      ))}
      {isNone ? null : (
        <button type="button" className="button" onClick={() => set({ figure: NO_CORRECTION }, "figure")}>
          Remove the correction
        </button>
      )}
    </details>
  );
}

function PhaseFields({
  form: { draft, faultAt, set },
  phase,
}: {
  readonly form: MoveFormState;
  readonly phase: Phase;
}) {
  const { figure, units } = draft;
  return (
    <fieldset className={styles.choice}>
      <legend>{PHASE_WORDS[phase]}</legend>
      <div className={styles.four}>
        {CORRECTION_KEYS.map((key) => (
          <TextInput
            key={key}
            place={`figure.${phase}.${key}`}
            label={CORRECTION_WORDS[key]}
            unit={isLength(key) ? smallUnit(units) : "°"}
            signed
            value={figure[phase][key] ?? ""}
            fault={faultAt(`figure.${phase}.${key}`)}
            onChange={(typed) =>
              set({ figure: { ...figure, [phase]: changed(figure[phase], key, typed) } }, `figure.${phase}.${key}`)
            }
          />
        ))}
      </div>
    </fieldset>
  );
}

/** An emptied field is as one that was never filled, so that nothing counts as typed. */
function changed<K extends string>(values: Readonly<Partial<Record<K, string>>>, key: K, typed: string) {
  const { [key]: _, ...others } = { ...values };
  return typed === "" ? others : { ...others, [key]: typed };
}
