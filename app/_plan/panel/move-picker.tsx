"use client";
/** The library as a list one searches by typing: arrows choose, Enter takes. */
import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from "react";
import { moveLine } from "#lib/library/move-words.ts";
import { findMoves, libraryIndex, NO_FILTER } from "#lib/library/search.ts";
import { plural } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./panel.module.css";

interface MovePickerProps {
  readonly moves: Readonly<Record<string, Move>>;
  /** Ids that are not offered any more. */
  readonly archived?: readonly string[] | undefined;
  readonly chosen: string | null;
  readonly onTake: (moveId: string) => void;
  readonly autoFocus?: boolean;
}

export function MovePicker({ moves, archived, chosen, onTake, autoFocus = false }: MovePickerProps) {
  const id = useId();
  const [query, setQuery] = useState("");
  const [at, setAt] = useState(0);
  const index = useMemo(() => libraryIndex(moves, undefined, archived), [moves, archived]);
  const found = useMemo(() => findMoves(index, { ...NO_FILTER, text: query }), [index, query]);
  const list = useRef<HTMLDivElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const current = found[Math.min(at, found.length - 1)];

  useEffect(() => {
    if (autoFocus) input.current?.focus();
  }, [autoFocus]);
  useEffect(() => {
    list.current?.children[at]?.scrollIntoView({ block: "nearest" });
  }, [at]);

  const onKeyDown = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1, PageDown: 6, PageUp: -6 }[event.key];
    if (step !== undefined) setAt((now) => Math.max(0, Math.min(found.length - 1, now + step)));
    else if (event.key === "Enter" && current) onTake(current.id);
    else return;
    event.preventDefault();
  };

  return (
    <div className={styles.picker}>
      <label htmlFor={`${id}-query`}>Search the library</label>
      <input
        ref={input}
        id={`${id}-query`}
        type="search"
        role="combobox"
        aria-expanded="true"
        aria-controls={`${id}-list`}
        aria-activedescendant={current ? `${id}-${current.id}` : undefined}
        autoComplete="off"
        placeholder="name, muscle, position or pattern"
        value={query}
        onChange={(event) => {
          setQuery(event.target.value);
          setAt(0);
        }}
        onKeyDown={onKeyDown}
      />
      <p className={styles.count} role="status">
        {found.length === 0 ? "No move has all these words." : plural(found.length, "move")}
      </p>
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
            <b>{move.name}</b>
            {move.sides === "each" && <span className={styles.each}>each side</span>}
            <span className={styles.line}>{moveLine(move)}</span>
          </div>
        ))}
      </div>
    </div>
  );
}
