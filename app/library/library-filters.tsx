"use client";
/** What to look for: words, and choices beside them. On a narrow screen the choices fold away behind one button. */
import { type KeyboardEvent, useId, useState } from "react";
import type { KnownSpring } from "#lib/library/known-springs.ts";
import { CAUTION_WORDS, STATION_WORDS } from "#lib/library/move-words.ts";
import type { LibraryFilter, SpringChoice } from "#lib/library/search.ts";
import { plural, tagWords } from "#lib/plan/format.ts";
import { GROUPS, MOVE_CAUTIONS, PATTERNS, POSITIONS, STATIONS } from "#lib/plan/schema.ts";
import { LeaveOut } from "./leave-out.tsx";
import styles from "./library.module.css";

interface FiltersProps {
  readonly filter: LibraryFilter;
  readonly springs: readonly KnownSpring[];
  readonly onChange: (filter: LibraryFilter) => void;
  readonly onSearchKey: (event: KeyboardEvent) => void;
}

const words = <T extends string>(values: readonly T[]): (readonly [T, string])[] =>
  values.map((value) => [value, tagWords(value)]);

export function LibraryFilters({ filter, springs, onChange, onSearchKey }: FiltersProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const chosen = choicesMade(filter);
  return (
    <search className={styles.filters}>
      <div className={`field ${styles.search}`}>
        <label htmlFor="library-search">Search</label>
        <input
          id="library-search"
          type="search"
          value={filter.text}
          placeholder="row, kneeling, triceps, front …"
          autoComplete="off"
          enterKeyHint="search"
          aria-describedby={`${id}-keys`}
          onChange={(event) => onChange({ ...filter, text: event.target.value })}
          onKeyDown={onSearchKey}
        />
        <span id={`${id}-keys`} className="visually-hidden">
          The down arrow goes into the list of moves.
        </span>
      </div>
      <button
        type="button"
        className={`button ${styles.more}`}
        aria-expanded={open}
        aria-controls={`${id}-choices`}
        onClick={() => setOpen(!open)}
      >
        {chosen === 0 ? "Choices" : plural(chosen, "choice")}
      </button>
      <div id={`${id}-choices`} className={styles.choices} data-open={open || undefined}>
        <Choices filter={filter} springs={springs} onChange={onChange} />
      </div>
    </search>
  );
}

function Choices({ filter, springs, onChange }: Omit<FiltersProps, "onSearchKey">) {
  const take =
    <K extends keyof LibraryFilter>(key: K) =>
    (value: LibraryFilter[K]) =>
      onChange({ ...filter, [key]: value });
  const stations = STATIONS.map((station) => [station, STATION_WORDS[station]] as const);
  const cautions = MOVE_CAUTIONS.map((tag) => [tag, CAUTION_WORDS[tag]] as const);
  return (
    <>
      <Choice label="Trains" all="any muscle" value={filter.group} options={words(GROUPS)} onChange={take("group")} />
      <Choice
        label="Pattern"
        all="any pattern"
        value={filter.pattern}
        options={words(PATTERNS)}
        onChange={take("pattern")}
      />
      <Choice
        label="Position"
        all="any position"
        value={filter.position}
        options={words(POSITIONS)}
        onChange={take("position")}
      />
      <Choice label="Station" all="any station" value={filter.station} options={stations} onChange={take("station")} />
      <Choice
        label="Springs"
        all="any springs"
        value={filter.springs}
        options={springChoices(springs)}
        onChange={take("springs")}
      />
      <Choice label="Asks for" all="anything" value={filter.asks} options={cautions} onChange={take("asks")} />
      <LeaveOut chosen={filter.without} onChange={take("without")} />
    </>
  );
}

type Chosen = Exclude<SpringChoice, "">;

function springChoices(springs: readonly KnownSpring[]): (readonly [Chosen, string])[] {
  const each = springs.flatMap(({ id, label }): (readonly [Chosen, string])[] => [
    [`takes ${id}`, `may take ${label}`],
    [`needs ${id}`, `needs ${label}`],
  ]);
  return [["bodyweight", "body weight alone"], ...each];
}

function choicesMade({ text: _text, without, ...choices }: LibraryFilter): number {
  return Object.values(choices).filter((value) => value !== "").length + (without.length > 0 ? 1 : 0);
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly all: string;
  readonly value: T | "";
  readonly options: readonly (readonly [T, string])[];
  readonly onChange: (value: T | "") => void;
}

function Choice<T extends string>({ label, all, value, options, onChange }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        data-on={value !== "" || undefined}
        onChange={(event) => onChange(options.find(([option]) => option === event.target.value)?.[0] ?? "")}
      >
        <option value="">{all}</option>
        {options.map(([option, label]) => (
          <option key={option} value={option}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}
