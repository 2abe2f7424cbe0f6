"use client";
import { useId, useMemo, useState } from "react";
/** Search, filter and read. The list is words; a move opens in place, so that nothing is lost from sight. */
import { plural } from "#lib/plan/format.ts";
import { GROUPS, MOVE_CAUTIONS, type Move, PATTERNS, POSITIONS } from "#lib/plan/schema.ts";
import styles from "./library.module.css";
import { MoveFacts } from "./move-facts.tsx";
import {
  CAUTION_WORDS,
  groupWords,
  type LibraryFilter,
  muscleWords,
  NO_FILTER,
  passes,
  patternWords,
} from "./move-words.ts";

interface LibraryProps {
  readonly moves: Readonly<Record<string, Move>>;
  readonly note: readonly string[];
}

export function LibraryBrowser({ moves, note }: LibraryProps) {
  const [filter, setFilter] = useState<LibraryFilter>(NO_FILTER);
  const sorted = useMemo(
    () => Object.entries(moves).sort(([, a], [, b]) => (a.name.toLowerCase() < b.name.toLowerCase() ? -1 : 1)),
    [moves],
  );
  const shown = sorted.filter(([, move]) => passes(move, filter));
  return (
    <>
      <details className={styles.note}>
        <summary>Before you use a move</summary>
        {note.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </details>
      <Filters filter={filter} onChange={setFilter} />
      <p role="status" className={styles.count}>
        {shown.length === sorted.length
          ? plural(sorted.length, "move")
          : `${shown.length} of ${plural(sorted.length, "move")}`}
        {shown.length < sorted.length ? (
          <button type="button" className="button button-quiet" onClick={() => setFilter(NO_FILTER)}>
            Show all
          </button>
        ) : null}
      </p>
      <ul className={styles.moves}>
        {shown.map(([id, move]) => (
          <li key={id}>
            <details className={styles.move}>
              <summary>
                <span className={styles.tint} data-pattern={move.pattern}>
                  {patternWords(move.pattern)}
                </span>
                <span className={styles.name}>{move.name}</span>
                <span className={styles.muscles}>{muscleWords(move).prime.join(", ")}</span>
                <span className={styles.cautions}>
                  {(move.cautions ?? []).map((tag) => CAUTION_WORDS[tag]).join(", ")}
                </span>
              </summary>
              <MoveFacts move={move} />
            </details>
          </li>
        ))}
      </ul>
    </>
  );
}

interface FiltersProps {
  readonly filter: LibraryFilter;
  readonly onChange: (filter: LibraryFilter) => void;
}

function Filters({ filter, onChange }: FiltersProps) {
  const id = useId();
  return (
    <search className={styles.filters}>
      <div className="field">
        <label htmlFor={id}>Search</label>
        <input
          id={id}
          type="search"
          value={filter.text}
          placeholder="row, kneeling, triceps ..."
          onChange={(event) => onChange({ ...filter, text: event.target.value })}
        />
      </div>
      <Choice
        label="Trains"
        all="any muscle"
        value={filter.group}
        options={GROUPS.map((group) => [group, groupWords(group)])}
        onChange={(group) => onChange({ ...filter, group })}
      />
      <Choice
        label="Pattern"
        all="any pattern"
        value={filter.pattern}
        options={PATTERNS.map((pattern) => [pattern, patternWords(pattern)])}
        onChange={(pattern) => onChange({ ...filter, pattern })}
      />
      <Choice
        label="Position"
        all="any position"
        value={filter.position}
        options={POSITIONS.map((position) => [position, position.replaceAll("-", " ")])}
        onChange={(position) => onChange({ ...filter, position })}
      />
      <Choice
        label="Leave out"
        all="nothing"
        value={filter.without}
        options={MOVE_CAUTIONS.map((tag) => [tag, CAUTION_WORDS[tag]])}
        onChange={(without) => onChange({ ...filter, without })}
      />
    </search>
  );
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
        onChange={(event) => onChange(options.find(([option]) => option === event.target.value)?.[0] ?? "")}
      >
        <option value="">{all}</option>
        {options.map(([option, words]) => (
          <option key={option} value={option}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
