"use client";
/** The fields of a class of the programme. Half-typed numbers stay as typed; only whole ones are handed on. */
import { type ReactNode, useId, useState } from "react";
import { planTitle } from "#lib/plan/plan-title.ts";
import { daysOfMonth } from "#lib/programme/calendar.ts";
import { SLOT_MINUTES, type Slot } from "#lib/programme/layout.ts";
import { slotTextOf } from "#lib/programme/read.ts";
import { SharedText } from "../_parts/shared-text.tsx";
import { STATE_WORDS } from "../_parts/state-words.ts";
import { lengthWords } from "../_parts/time-words.ts";
import styles from "./month.module.css";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps } from "./month-types.ts";

interface SlotFieldsProps {
  readonly slot: Slot;
  readonly props: MonthPageProps;
  readonly writes: boolean;
  /** Begin in the theme: for a new class, which has nothing to read yet. */
  readonly first?: boolean;
  readonly onChange: (part: Partial<Slot>) => void;
  /** Of a class that is there, theme and note are typed into its shared texts; a new one's go to `onChange`. */
  readonly session?: MonthSession;
}

export function SlotFields({ slot, props, writes, first = false, onChange, session }: SlotFieldsProps) {
  const days = daysOfMonth(props.month);
  const teachers = props.people.filter(
    ({ id, roles }) => id === slot.coachId || roles.some((role) => TEACH.includes(role)),
  );
  return (
    <fieldset className={styles.form} disabled={!writes}>
      <legend className="visually-hidden">The class</legend>
      <Labelled label="Theme">
        {(id) => (
          <SlotText {...{ id, slot, session }} field="theme" readOnly={!writes} maxLength={120}>
            <input
              id={id}
              data-first={first ? "" : undefined}
              value={slot.theme}
              maxLength={120}
              onChange={(e) => onChange({ theme: e.target.value })}
            />
          </SlotText>
        )}
      </Labelled>
      <div className={styles.three}>
        <Labelled label="Day">
          {(id) => (
            <input
              id={id}
              type="date"
              value={slot.date}
              min={days[0]}
              max={days.at(-1)}
              onChange={(e) => {
                if (days.includes(e.target.value)) onChange({ date: e.target.value });
              }}
            />
          )}
        </Labelled>
        <Labelled label="Begins">
          {(id) => (
            <input
              id={id}
              type="time"
              value={slot.time}
              onChange={(e) => {
                if (e.target.value !== "") onChange({ time: e.target.value });
              }}
            />
          )}
        </Labelled>
        <Minutes minutes={slot.minutes} onChange={(minutes) => onChange({ minutes })} />
      </div>
      <div className={styles.three}>
        <Choice
          label="Coach"
          none="nobody yet"
          value={slot.coachId}
          options={teachers.map(({ id, name }) => [id, name])}
          onChange={(coachId) => onChange({ coachId })}
        />
        <Choice
          label="Room"
          none="no room yet"
          value={slot.roomId}
          options={props.rooms.map(({ id, name }) => [id, name])}
          onChange={(roomId) => onChange({ roomId })}
        />
      </div>
      <Choice
        label="Plan"
        none="no plan yet"
        value={slot.planId}
        options={props.plans.map((plan) => [
          plan.id,
          `${planTitle(plan.title)} (${lengthWords(plan.lengthSeconds)}, ${STATE_WORDS[plan.state]})`,
        ])}
        onChange={(planId) => onChange({ planId })}
      />
      <Labelled label="Note">
        {(id) => (
          <SlotText {...{ id, slot, session }} field="note" readOnly={!writes} rows={2}>
            <textarea id={id} value={slot.note} rows={2} onChange={(e) => onChange({ note: e.target.value })} />
          </SlotText>
        )}
      </Labelled>
    </fieldset>
  );
}

interface SlotTextProps extends Pick<SlotFieldsProps, "slot" | "session"> {
  readonly id: string;
  readonly field: "theme" | "note";
  readonly readOnly: boolean;
  readonly maxLength?: number;
  readonly rows?: number;
  /** The field of a class that is not in the programme yet. */
  readonly children: ReactNode;
}

function SlotText({ slot, session, field, children, ...rest }: SlotTextProps) {
  if (!session) return children;
  const text = slotTextOf(session.doc, slot.id, field);
  // Only a foreign program leaves a slot without its texts: then there is nothing that two people could type in.
  return text ? (
    <SharedText host={session} text={text} {...rest} />
  ) : (
    <input id={rest.id} value={slot[field]} readOnly />
  );
}

/** Who can be given a class. */
const TEACH: readonly string[] = ["trainee", "coach", "lead"];

function Labelled({ label, children }: { readonly label: string; readonly children: (id: string) => ReactNode }) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children(id)}
    </div>
  );
}

function Minutes({ minutes, onChange }: { readonly minutes: number; readonly onChange: (minutes: number) => void }) {
  /** What is half typed counts only beside the value that it was typed over: undo and others change it under the field. */
  const [typed, setTyped] = useState<{ readonly text: string; readonly over: number } | null>(null);
  return (
    <Labelled label="Minutes">
      {(id) => (
        <input
          id={id}
          type="number"
          min={SLOT_MINUTES.min}
          max={SLOT_MINUTES.max}
          value={typed?.over === minutes ? typed.text : String(minutes)}
          onBlur={() => setTyped(null)}
          onChange={(e) => {
            const value = Number(e.target.value);
            const fits = Number.isInteger(value) && value >= SLOT_MINUTES.min && value <= SLOT_MINUTES.max;
            setTyped({ text: e.target.value, over: fits ? value : minutes });
            if (fits) onChange(value);
          }}
        />
      )}
    </Labelled>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly none: string;
  readonly value: string | null;
  readonly options: readonly (readonly [string, string])[];
  readonly onChange: (value: string | null) => void;
}

/** A value that is not among the options (a plan one may not read, a person who left) is kept and said to be so. */
function Choice({ label, none, value, options, onChange }: ChoiceProps) {
  const strange = value !== null && !options.some(([id]) => id === value);
  return (
    <Labelled label={label}>
      {(id) => (
        <select id={id} value={value ?? ""} onChange={(e) => onChange(e.target.value === "" ? null : e.target.value)}>
          <option value="">{none}</option>
          {strange ? <option value={value}>one you cannot see</option> : null}
          {options.map(([option, words]) => (
            <option key={option} value={option}>
              {words}
            </option>
          ))}
        </select>
      )}
    </Labelled>
  );
}
