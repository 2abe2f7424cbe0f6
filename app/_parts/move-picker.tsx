"use client";
/** The library as a list to search by typing: the arrow keys choose, Enter takes. */
import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from "react";
import { springNames } from "#lib/library/known-springs.ts";
import { moveLine } from "#lib/library/move-words.ts";
import { type FoundMove, findMoves, libraryIndex, NO_FILTER } from "#lib/library/search.ts";
import { plural } from "#lib/plan/format.ts";
import type { Equipment, Move } from "#lib/plan/schema.ts";
import { SmallFigure } from "./late-figure.tsx";
import styles from "./panel.module.css";

interface MovePickerProps {
  readonly moves: Readonly<Record<string, Move>>;
  /** Ids that are not offered any more. */
  readonly archived?: readonly string[] | undefined;
  /** Its springs can be searched for by name, as in the library. */
  readonly equipment: Equipment;
  readonly chosen: string | null;
  readonly onTake: (moveId: string) => void;
  readonly autoFocus?: boolean;
}

export function MovePicker({ moves, archived, equipment, chosen, onTake, autoFocus = false }: MovePickerProps) {
  const id = useId();
  const { query, setQuery, found, at, current, onKeyDown } = useSearch({ moves, archived, equipment, onTake });
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (autoFocus) input.current?.focus();
  }, [autoFocus]);
  return (
    <div className={styles.picker}>
      <label htmlFor={`${id}-query`}>Search the library</label>
      <input
        ref={input}
        data-first=""
        id={`${id}-query`}
        type="search"
        role="combobox"
        aria-expanded="true"
        aria-controls={`${id}-list`}
        aria-activedescendant={current ? `${id}-${current.id}` : undefined}
        autoComplete="off"
        placeholder="name, muscle, position or pattern"
        value={query}
        onChange={(event) => setQuery(event.target.value)}
        onKeyDown={onKeyDown}
      />
      <p className="quiet small" role="status">
        {found.length === 0 ? "No move matches all of these words. Try fewer." : plural(found.length, "move")}
      </p>
      <Found id={id} found={found} at={at} chosen={chosen} onTake={onTake} />
    </div>
  );
}

/** What is typed, what is found, and the row that the arrow keys stand on. */
function useSearch({ moves, archived, equipment, onTake }: Omit<MovePickerProps, "chosen" | "autoFocus">) {
  const [query, setQuery] = useState("");
  const [at, setAt] = useState(0);
  const { springs } = equipment;
  const index = useMemo(() => libraryIndex(moves, springNames(springs), archived), [moves, springs, archived]);
  const found = useMemo(() => findMoves(index, { ...NO_FILTER, text: query }), [index, query]);
  const current = found[Math.min(at, found.length - 1)];
  const onKeyDown = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1, PageDown: 6, PageUp: -6 }[event.key];
    if (step !== undefined) setAt((now) => Math.max(0, Math.min(found.length - 1, now + step)));
    else if (event.key === "Enter" && current) onTake(current.id);
    else return;
    event.preventDefault();
  };
  const search = (typed: string) => {
    setQuery(typed);
    setAt(0);
  };
  return { query, setQuery: search, found, at, current, onKeyDown };
}

interface FoundProps extends Pick<MovePickerProps, "chosen" | "onTake"> {
  readonly id: string;
  readonly found: readonly FoundMove[];
  readonly at: number;
}

function Found({ id, found, at, chosen, onTake }: FoundProps) {
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    list.current?.children[at]?.scrollIntoView({ block: "nearest" });
  }, [at]);
  return (
    <div ref={list} id={`${id}-list`} role="listbox" aria-label="Moves" className={styles.moves}>
      {found.map(({ id: moveId, move }, i) => (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the field above answers the keys
        // biome-ignore lint/a11y/useFocusableInteractive: focus stays in the field, which names the active row
        <div
          key={moveId}
          id={`${id}-${moveId}`}
          role="option"
          aria-selected={i === at}
          data-chosen={moveId === chosen || undefined}
          onClick={() => onTake(moveId)}
        >
          <span className={styles.figure}>
            <SmallFigure move={move} />
          </span>
          <b>{move.name}</b>
          {move.sides === "each" && <span className={styles.each}>each side</span>}
          <span className={styles.line}>{moveLine(move)}</span>
        </div>
      ))}
    </div>
  );
}
