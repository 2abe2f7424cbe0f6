"use client";
/** What the person works against: the load, the springs that give it, how far the carriage travels. */
import { CoilMark } from "#app/_parts/coils/coil.tsx";
import type { SpringLimitDraft } from "#lib/library/draft.ts";
import type { KnownSpring } from "#lib/library/known-springs.ts";
import { RESISTANCE_WORDS } from "#lib/library/move-words.ts";
import { own } from "#lib/plan/lookup.ts";
import { RESISTANCES } from "#lib/plan/schema.ts";
import styles from "./form.module.css";
import { fieldId, OneOf, PairInput, TextInput } from "./form-fields.tsx";
import { RANGE_WORDS } from "./part-words.ts";
import { choiceOf } from "./setup-part.tsx";
import type { MoveFormState } from "./use-move-form.ts";

interface LoadPartProps {
  readonly form: MoveFormState;
  readonly springs: readonly KnownSpring[];
  /** Line weight of each spring's coil, by its id. */
  readonly coils: Readonly<Record<string, number>>;
}

export function MoveLoadPart({ form, springs, coils }: LoadPartProps) {
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
          names={[RANGE_WORDS.min, RANGE_WORDS.max]}
          unit={draft.units.force}
          value={draft.loadN}
          faultAt={faultAt}
          onChange={(loadN, place) => set({ loadN }, place)}
        />
        <PairInput
          place="travelMm"
          legend="Travel of the carriage"
          names={["from", "to"]}
          unit={draft.units.length}
          value={draft.travel}
          faultAt={faultAt}
          onChange={(travel, place) => set({ travel }, place)}
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
      <legend>Springs to use</legend>
      <p className="hint small quiet">
        How many of each spring. Leave empty where any number will do; a most of 0 means never with this spring.
      </p>
      {springs.length === 0 ? (
        <p className="quiet">No room has springs yet. A manager adds them under Studio.</p>
      ) : null}
      {springs.map((spring) => (
        <div key={spring.id} className={styles.spring}>
          <SpringName spring={spring} weight={own(coils, spring.id) ?? 2} />
          {(["min", "max"] as const).map((key) => (
            <TextInput
              key={key}
              place={`springs.${key}.${spring.id}`}
              label={RANGE_WORDS[key]}
              of={spring.label}
              decimal
              value={own(draft.springs, spring.id)?.[key] ?? ""}
              fault={faultAt(`springs.${key}.${spring.id}`)}
              onChange={(value) => set(spring.id, key, value)}
            />
          ))}
        </div>
      ))}
    </fieldset>
  );
}

/** A spring that only the move still knows is drawn as one that is off. */
function SpringName({ spring: { label, rooms }, weight }: { readonly spring: KnownSpring; readonly weight: number }) {
  return (
    <span className={styles.springName}>
      <CoilMark weight={weight} off={rooms.length === 0} />
      <span>
        {label}
        <span className="quiet small">{rooms.length === 0 ? " in no room" : ""}</span>
      </span>
    </span>
  );
}
