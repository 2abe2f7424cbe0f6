"use client";
/** What the move asks of a body, and easier and harder ways to do it. */
import { useEffect, useRef } from "react";
import { CAUTION_NOTICE } from "#lib/cautions/expected.ts";
import { CAUTION_WORDS, POSE_WORDS } from "#lib/library/move-words.ts";
import { MOVE_CAUTIONS, POSES } from "#lib/plan/schema.ts";
import styles from "./form.module.css";
import { Below, fieldId, ManyOf, SelectInput } from "./form-fields.tsx";
import type { MoveFormState } from "./use-move-form.ts";

export function CarePart({ form }: { readonly form: MoveFormState }) {
  const { draft, faultAt, set } = form;
  return (
    <>
      <ManyOf
        place="cautions"
        label="Cautions"
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
          label="Pose with weight on the hands"
          value={draft.pose}
          none="none, or not known"
          options={POSES.map((pose) => [pose, POSE_WORDS[pose]])}
          fault={faultAt("handsShare.pose")}
          hint="Used to work out how much body weight the hands carry."
          onChange={(pose) => set({ pose }, "handsShare.pose")}
        />
      </div>
    </>
  );
}

/** Sentences to say, each in a field of its own. */
function Ways({ form, way }: { readonly form: MoveFormState; readonly way: "easier" | "harder" }) {
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
      {lines.map((line, at) => (
        <WayField
          // biome-ignore lint/suspicious/noArrayIndexKey: the fields are bound to their places, their words may be equal
          key={at}
          way={way}
          at={at}
          line={line}
          fault={form.faultAt(`${way}.${at}`)}
          onChange={(typed) => set(lines.with(at, typed), at)}
          onRemove={() => set(lines.toSpliced(at, 1), at)}
        />
      ))}
      <button type="button" className="button" onClick={add}>
        {lines.length === 0 ? `Add ${way === "easier" ? "an easier" : "a harder"} way` : "Add another"}
      </button>
    </fieldset>
  );
}

interface WayFieldProps {
  readonly way: "easier" | "harder";
  readonly at: number;
  readonly line: string;
  readonly fault: string | undefined;
  readonly onChange: (typed: string) => void;
  readonly onRemove: () => void;
}

function WayField({ way, at, line, fault, onChange, onRemove }: WayFieldProps) {
  const id = fieldId(`${way}.${at}`);
  return (
    <div className={styles.way}>
      <textarea
        id={id}
        rows={2}
        value={line}
        aria-label={`${way === "easier" ? "Easier" : "Harder"} way ${at + 1}`}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        onChange={(event) => onChange(event.target.value)}
      />
      <button type="button" className="button" onClick={onRemove}>
        Remove<span className="visually-hidden"> {`${way} way ${at + 1}`}</span>
      </button>
      <Below id={id} fault={fault} />
    </div>
  );
}
