"use client";
/** The fields of a class of the programme. */
import type { ReactNode } from "react";
import { daysOfMonth } from "#lib/calendar/days.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { openSlotNote } from "#lib/programme/write.ts";
import { SharedText } from "../_parts/shared-text.tsx";
import { Labelled, MinutesField, SlotChoice } from "./labelled.tsx";
import styles from "./month.module.css";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps } from "./month-types.ts";
import { planOption, SLOT_WORDS } from "./month-words.ts";

interface SlotFieldsProps {
  readonly slot: Slot;
  readonly props: MonthPageProps;
  readonly writes: boolean;
  /** Begin in the theme: for a new class, in which there is nothing to read. */
  readonly first?: boolean;
  readonly onChange: (part: Partial<Slot>) => void;
  /** With a class that is there, theme and note are typed into its shared texts; those of a new one go to `onChange`. */
  readonly session?: MonthSession;
}

export function SlotFields(fields: SlotFieldsProps) {
  return (
    <fieldset className={styles.form} disabled={!fields.writes}>
      <legend className="visually-hidden">The class</legend>
      <Theme {...fields} />
      <When {...fields} />
      <WhoAndWhat {...fields} />
      <Note {...fields} />
    </fieldset>
  );
}

/** A class names one of the month's themes: its words are those of the field once it is left. */
function Theme({ slot, session, writes, first, onChange }: SlotFieldsProps) {
  return (
    <Labelled label={SLOT_WORDS.theme}>
      {(id) => (
        <input
          key={session ? slot.theme : ""}
          id={id}
          data-first={first ? "" : undefined}
          defaultValue={slot.theme}
          maxLength={120}
          readOnly={!writes}
          onChange={(event) => session === undefined && onChange({ theme: event.target.value })}
          onBlur={(event) => event.target.value !== slot.theme && onChange({ theme: event.target.value })}
        />
      )}
    </Labelled>
  );
}

function Note({ slot, session, writes, onChange }: SlotFieldsProps) {
  return (
    <Labelled label={SLOT_WORDS.note}>
      {(id) => (
        <SlotText {...{ id, slot, session }} readOnly={!writes} rows={2}>
          <textarea id={id} value={slot.note} rows={2} onChange={(event) => onChange({ note: event.target.value })} />
        </SlotText>
      )}
    </Labelled>
  );
}

function When({ slot, props, onChange }: SlotFieldsProps) {
  const days = daysOfMonth(props.month);
  const setDate = (date: string) => days.includes(date) && onChange({ date });
  const setTime = (time: string) => time !== "" && onChange({ time });
  return (
    <div className={styles.three}>
      <Labelled label={SLOT_WORDS.day}>
        {(id) => (
          <input
            id={id}
            type="date"
            value={slot.date}
            min={days[0]}
            max={days.at(-1)}
            onChange={(event) => setDate(event.target.value)}
          />
        )}
      </Labelled>
      <Labelled label={SLOT_WORDS.time}>
        {(id) => <input id={id} type="time" value={slot.time} onChange={(event) => setTime(event.target.value)} />}
      </Labelled>
      <MinutesField minutes={slot.minutes} onChange={(minutes) => onChange({ minutes })} />
    </div>
  );
}

/** Who can be given a class. */
const TEACH: readonly string[] = ["trainee", "coach", "lead"];

function WhoAndWhat({ slot, props, onChange }: SlotFieldsProps) {
  const teachers = props.people.filter(
    ({ id, roles }) => id === slot.coachId || roles.some((role) => TEACH.includes(role)),
  );
  return (
    <>
      <div className={styles.three}>
        <SlotChoice
          label={SLOT_WORDS.coach}
          none={SLOT_WORDS.noCoach}
          value={slot.coachId}
          options={teachers.map(({ id, name }) => [id, name])}
          onChange={(coachId) => onChange({ coachId })}
        />
        <SlotChoice
          label={SLOT_WORDS.room}
          none={SLOT_WORDS.noRoom}
          value={slot.roomId}
          options={props.rooms.map(({ id, name }) => [id, name])}
          onChange={(roomId) => onChange({ roomId })}
        />
      </div>
      <SlotChoice
        label={SLOT_WORDS.plan}
        none={SLOT_WORDS.noPlan}
        value={slot.planId}
        options={props.plans.map((plan) => [plan.id, planOption(plan)])}
        onChange={(planId) => onChange({ planId })}
      />
    </>
  );
}

interface SlotTextProps extends Pick<SlotFieldsProps, "slot" | "session"> {
  readonly id: string;
  readonly readOnly: boolean;
  readonly maxLength?: number;
  readonly rows?: number;
  /** The field of a class that is not in the programme yet. */
  readonly children: ReactNode;
}

function SlotText({ slot, session, children, ...rest }: SlotTextProps) {
  if (!session) return children;
  const text = openSlotNote(session.writer, slot.id);
  // Only another program leaves a slot without its texts. Then there is nothing that two people could type in.
  return text ? <SharedText host={session} text={text} {...rest} /> : <input id={rest.id} value={slot.note} readOnly />;
}
