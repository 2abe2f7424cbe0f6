"use client";
import { useId } from "react";
import { timeWords } from "#lib/formats/dates.ts";
import type { LanguageOption } from "#lib/formats/format-options.ts";
/** The fields of formats: for a person each may be as the studio has it. */
import {
  FORCE_UNITS,
  type FormatChoices,
  LENGTH_UNITS,
  type OwnFormats,
  STANDARD_FORMATS,
} from "#lib/formats/formats.ts";
import { FORCE_NAMES, LENGTH_NAMES } from "#lib/formats/units.ts";

const EVENING = "19:05";
const HOURS = { "24": "24 hours", "12": "12 hours" } as const;
const clock = (value: "24" | "12") => `${HOURS[value]}: ${timeWords(EVENING, { ...STANDARD_FORMATS, clock: value })}`;

interface Option {
  readonly value: string;
  readonly label: string;
  readonly lang?: string;
}
type Key = keyof FormatChoices;

const OPTIONS: Readonly<Record<Exclude<Key, "dates">, readonly Option[]>> = {
  clock: (["24", "12"] as const).map((value) => ({ value, label: clock(value) })),
  weekStart: [
    { value: "1", label: "Monday" },
    { value: "7", label: "Sunday" },
  ],
  force: FORCE_UNITS.map((value) => ({ value, label: `${FORCE_NAMES[value]} (${value})` })),
  length: LENGTH_UNITS.map((value) => ({ value, label: `${LENGTH_NAMES[value]} (${value})` })),
};
const LABELS: readonly (readonly [Key, string])[] = [
  ["dates", "Dates are written in"],
  ["clock", "Clock"],
  ["weekStart", "A week begins on"],
  ["force", "Forces are in"],
  ["length", "Lengths are in"],
];

interface FieldsProps<T extends OwnFormats | FormatChoices> {
  readonly value: T;
  /** What is chosen where nothing is; left out for the studio itself. */
  readonly studio?: FormatChoices;
  readonly languages: readonly LanguageOption[];
  readonly onChange: (change: Partial<OwnFormats>) => void;
}

export function FormatFields<T extends OwnFormats | FormatChoices>({
  value,
  studio,
  languages,
  onChange,
}: FieldsProps<T>) {
  return LABELS.map(([key, label]) => {
    const options = key === "dates" ? languages : OPTIONS[key];
    const theirs = options.find((one) => studio !== undefined && one.value === String(studio[key]));
    const own = value[key] === null ? "" : String(value[key]);
    return (
      <Select
        key={key}
        label={label}
        value={own}
        options={theirs ? [{ value: "", label: `As the studio has it (${theirs.label})` }, ...options] : options}
        onChoose={(chosen) => onChange({ [key]: chosen === "" ? null : key === "weekStart" ? Number(chosen) : chosen })}
      />
    );
  });
}

interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly Option[];
  readonly onChoose: (value: string) => void;
}

/** As the other fields of the forms that it stands in; an option with a language is read aloud in it. */
function Select({ label, value, options, onChoose }: SelectProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
        {options.map((one) => (
          <option key={one.value} value={one.value} lang={one.lang}>
            {one.label}
          </option>
        ))}
      </select>
    </div>
  );
}

/** Of what is chosen now, that which differs from what was shown: only that is sent. */
export function changedFields<T extends object>(now: T, seen: T): Partial<T> {
  const keys = (Object.keys(now) as (keyof T)[]).filter((key) => now[key] !== seen[key]); // its own keys
  return Object.fromEntries(keys.map((key) => [key, now[key]])) as Partial<T>;
}
