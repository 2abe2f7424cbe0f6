"use client";
/** The fields of a class: when, where, who, for whom, what. */
import type { MonthSlot } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import type { SlotChange } from "#lib/programme/write.ts";
import { themeNamed } from "#lib/programme/write-lists.ts";
import { Labelled, MinutesField, NumberOrNone, SlotChoice } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import { SLOT_WORDS } from "./month-words.ts";
import styles from "./panel.module.css";

type ClassValues = Pick<
  MonthSlot,
  "start" | "minutes" | "room" | "coach" | "regulars" | "theme" | "people" | "locked"
> & { readonly date?: string };

interface ClassFieldsProps {
  readonly desk: MonthDesk;
  readonly slot: ClassValues;
  /** Begin in the theme: for a new class, in which there is nothing to read. */
  readonly first?: boolean;
  readonly onChange: (change: SlotChange) => void;
}

export function ClassFields(fields: ClassFieldsProps) {
  const { desk, slot, onChange } = fields;
  return (
    <fieldset className={styles.form} disabled={!desk.month.writes}>
      <legend className="visually-hidden">The class</legend>
      <ThemeField {...fields} />
      <When {...fields} />
      <Where {...fields} />
      <RegularsField desk={desk} slot={slot} onChange={onChange} />
      <div className={styles.two}>
        <NumberOrNone
          label={SLOT_WORDS.people}
          hint="left empty: as many as the regulars"
          value={slot.people}
          range={{ min: 0, max: 500 }}
          onChange={(people) => onChange({ people })}
        />
      </div>
      <label className="check">
        <input
          type="checkbox"
          checked={slot.locked ?? false}
          onChange={(event) => onChange({ locked: event.target.checked })}
        />
        {SLOT_WORDS.locked}
      </label>
    </fieldset>
  );
}

/** A class names one of the month's themes: a new name makes a new theme once the field is left. */
function ThemeField({ desk: { month, acts }, slot, first, onChange }: ClassFieldsProps) {
  const { themes } = month.state;
  const now = slot.theme == null ? "" : (own(themes, slot.theme)?.name ?? "");
  const take = (typed: string) => {
    if (typed.trim() === now) return;
    let theme: string | null = null;
    acts.run((w) => {
      theme = themeNamed(w, typed, themes);
    });
    onChange({ theme });
  };
  return (
    <Labelled label={SLOT_WORDS.theme}>
      {(id) => (
        <>
          <input
            key={now}
            id={id}
            data-first={first ? "" : undefined}
            list={`${id}-themes`}
            defaultValue={now}
            maxLength={120}
            onBlur={(event) => take(event.target.value)}
          />
          <datalist id={`${id}-themes`}>
            {Object.entries(themes).map(([theme, { name }]) => (
              <option key={theme} value={name} />
            ))}
          </datalist>
        </>
      )}
    </Labelled>
  );
}

function When({ desk: { month }, slot, onChange }: ClassFieldsProps) {
  const { from, to } = month.file.dates;
  const { date } = slot;
  return (
    <div className={styles.three}>
      {date !== undefined && (
        <Labelled label={SLOT_WORDS.day}>
          {(id) => (
            <input
              id={id}
              type="date"
              value={date}
              min={from}
              max={to}
              onChange={({ target: { value } }) => value >= from && value <= to && onChange({ date: value })}
            />
          )}
        </Labelled>
      )}
      <Labelled label={SLOT_WORDS.time}>
        {(id) => (
          <input
            id={id}
            type="time"
            value={slot.start}
            onChange={({ target: { value } }) => value !== "" && onChange({ start: value })}
          />
        )}
      </Labelled>
      <MinutesField minutes={slot.minutes} onChange={(minutes) => onChange({ minutes })} />
    </div>
  );
}

/** Who can be given a class. */
const TEACH: readonly string[] = ["trainee", "coach", "lead"];

function Where({ desk: { month }, slot, onChange }: ClassFieldsProps) {
  const coaches = Object.entries(month.file.coaches).filter(
    ([id, { roles }]) =>
      id === slot.coach || (roles.some((role) => TEACH.includes(role)) && own(month.studio.coaches, id)),
  );
  return (
    <div className={styles.two}>
      <SlotChoice
        label={SLOT_WORDS.coach}
        none={SLOT_WORDS.noCoach}
        value={slot.coach ?? null}
        options={coaches.map(([id, { name }]) => [id, name])}
        onChange={(coach) => onChange({ coach })}
      />
      <SlotChoice
        label={SLOT_WORDS.room}
        none={SLOT_WORDS.noRoom}
        value={slot.room ?? null}
        options={Object.entries(month.file.rooms).map(([id, { name }]) => [id, name])}
        onChange={(room) => onChange({ room })}
      />
    </div>
  );
}

function RegularsField({ desk: { month }, slot, onChange }: Pick<ClassFieldsProps, "desk" | "slot" | "onChange">) {
  const all = Object.entries(month.file.regulars);
  const come = slot.regulars ?? [];
  if (all.length === 0) return null;
  return (
    <fieldset>
      <legend>{SLOT_WORDS.regulars}</legend>
      <div className={styles.checks}>
        {all.map(([id, { name }]) => (
          <label key={id} className="check">
            <input
              type="checkbox"
              checked={come.includes(id)}
              onChange={(event) =>
                onChange({ regulars: event.target.checked ? [...come, id] : come.filter((one) => one !== id) })
              }
            />
            {name || "without a name"}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
