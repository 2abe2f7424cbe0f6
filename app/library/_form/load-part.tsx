"use client";
/** What the person works against: the load that is meant, the springs that may give it, how far the carriage goes. */
import { CoilMark } from "#app/_plan/coil.tsx";
import type { SpringLimitDraft } from "#lib/library/draft.ts";
import type { KnownSpring } from "#lib/library/known-springs.ts";
import { RESISTANCE_WORDS } from "#lib/library/move-words.ts";
import { own } from "#lib/plan/lookup.ts";
import { RESISTANCES } from "#lib/plan/schema.ts";
import styles from "./form.module.css";
import { fieldId, OneOf, PairInput, TextInput } from "./form-fields.tsx";
import { choiceOf } from "./setup-part.tsx";
import type { MoveForm } from "./use-move-form.ts";

interface LoadPartProps {
  readonly form: MoveForm;
  readonly springs: readonly KnownSpring[];
  /** Line weight of each spring's coil, by its id. */
  readonly coils: Readonly<Record<string, number>>;
}

export function LoadPart({ form, springs, coils }: LoadPartProps) {
  const { draft, faultAt, set } = form;
  return (
    <>
      <OneOf
        {...choiceOf(form, "resistance")}
        label="Works against"
        options={RESISTANCES.map((resistance) => [resistance, RESISTANCE_WORDS[resistance]])}
      />
      <div className={styles.two}>
        <PairInput
          place="loadN"
          legend="Load at mid-travel"
          names={["least", "most"]}
          unit="N"
          value={draft.loadN}
          faultAt={faultAt}
          onChange={(loadN, place) => set({ loadN }, place)}
        />
        <PairInput
          place="travelMm"
          legend="Travel of the carriage"
          names={["from", "to"]}
          unit="cm"
          value={draft.travelCm}
          faultAt={faultAt}
          onChange={(travelCm, place) => set({ travelCm }, place)}
        />
      </div>
      <Springs form={form} springs={springs} coils={coils} />
    </>
  );
}

const NOTHING: SpringLimitDraft = { min: "", max: "" };

function Springs({ form, springs, coils }: LoadPartProps) {
  const { draft, faultAt } = form;
  const set = (id: string, key: keyof SpringLimitDraft, value: string) => {
    const next = { ...(own(draft.springs, id) ?? NOTHING), [key]: value };
    form.set({ springs: { ...draft.springs, [id]: next } }, `springs.${key}.${id}`);
  };
  return (
    <fieldset className={styles.choice} id={fieldId("springs")} tabIndex={-1}>
      <legend>Springs it is meant for</legend>
      <p className="hint small quiet">Empty says nothing. A most of 0 says: not with this one.</p>
      {springs.length === 0 ? <p className="quiet">No room has a spring yet.</p> : null}
      {springs.map(({ id, label, rooms }) => (
        <div key={id} className={styles.spring}>
          <span className={styles.springName}>
            <CoilMark weight={own(coils, id) ?? 2} off={rooms.length === 0} />
            <span>
              {label}
              <span className="quiet small">{rooms.length === 0 ? " in no room" : ""}</span>
            </span>
          </span>
          {(["min", "max"] as const).map((key) => (
            <TextInput
              key={key}
              place={`springs.${key}.${id}`}
              label={key === "min" ? "least" : "most"}
              of={label}
              decimal
              value={own(draft.springs, id)?.[key] ?? ""}
              fault={faultAt(`springs.${key}.${id}`)}
              onChange={(value) => set(id, key, value)}
            />
          ))}
        </div>
      ))}
    </fieldset>
  );
}
