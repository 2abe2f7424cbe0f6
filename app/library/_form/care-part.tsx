"use client";
import { useEffect, useRef } from "react";
/** What the move asks of a body, and the ways round it. */
import { CAUTION_NOTICE } from "#lib/cautions/expected.ts";
import { CAUTION_WORDS, POSE_WORDS } from "#lib/library/move-words.ts";
import { MOVE_CAUTIONS, POSES } from "#lib/plan/schema.ts";
import styles from "./form.module.css";
import { Below, fieldId, ManyOf, SelectInput } from "./form-fields.tsx";
import type { MoveForm } from "./use-move-form.ts";

export function CarePart({ form }: { readonly form: MoveForm }) {
  const { draft, faultAt, set } = form;
  return (
    <>
      <ManyOf
        place="cautions"
        label="Asks for care"
        chosen={draft.cautions}
        options={MOVE_CAUTIONS.map((tag) => [tag, CAUTION_WORDS[tag]])}
        onChange={(cautions) => set({ cautions }, "cautions")}
      />
      <p className="quiet small">{CAUTION_NOTICE}</p>
      <Ways form={form} way="easier" />
      <Ways form={form} way="harder" />
      <div className={styles.two}>
        <SelectInput
          place="handsShare.pose"
          label="Hands carry the body as in"
          value={draft.pose}
          none="they do not, or it is not known"
          options={POSES.map((pose) => [pose, POSE_WORDS[pose]])}
          fault={faultAt("handsShare.pose")}
          hint="The share of body weight on the hands is worked out for this pose."
          onChange={(pose) => set({ pose }, "handsShare.pose")}
        />
      </div>
    </>
  );
}

/** Sentences to say, each in a field of its own. */
function Ways({ form, way }: { readonly form: MoveForm; readonly way: "easier" | "harder" }) {
  const lines = form.draft[way];
  const added = useRef(false);
  useEffect(() => {
    if (added.current) document.getElementById(fieldId(`${way}.${lines.length - 1}`))?.focus();
    added.current = false;
  }, [way, lines.length]);
  const add = () => {
    added.current = true;
    form.set({ [way]: [...lines, ""] }, way);
  };
  const set = (next: readonly string[], at: number) => form.set({ [way]: next }, `${way}.${at}`);
  return (
    <fieldset className={styles.choice} id={fieldId(way)} tabIndex={-1}>
      <legend>{way === "easier" ? "Easier ways" : "Harder ways"}</legend>
      {lines.map((line, at) => {
        const place = `${way}.${at}`;
        const id = fieldId(place);
        const fault = form.faultAt(place);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the fields are bound to their places, their words may be equal
          <div key={at} className={styles.way}>
            <textarea
              id={id}
              rows={2}
              value={line}
              aria-label={`${way === "easier" ? "Easier" : "Harder"} way ${at + 1}`}
              aria-invalid={fault !== undefined}
              aria-describedby={fault === undefined ? undefined : `${id}-fault`}
              onChange={(event) =>
                set(
                  lines.map((other, i) => (i === at ? event.target.value : other)),
                  at,
                )
              }
            />
            <button
              type="button"
              className="button"
              onClick={() =>
                set(
                  lines.filter((_, i) => i !== at),
                  at,
                )
              }
            >
              Take out<span className="visually-hidden"> {`${way} way ${at + 1}`}</span>
            </button>
            <Below id={id} fault={fault} />
          </div>
        );
      })}
      <button type="button" className="button" onClick={add}>
        {lines.length === 0 ? `Add ${way === "easier" ? "an easier" : "a harder"} way` : "Add another"}
      </button>
    </fieldset>
  );
}
