"use client";
/** Search, choose, open. Down arrow goes from the field into the list; the address keeps what was chosen. */
import { type KeyboardEvent, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import { PageKeys, type PageKeysProps } from "#app/_parts/key-help.tsx";
import { filterToQuery } from "#lib/library/filter-query.ts";
import { type KnownSpring, springNames } from "#lib/library/known-springs.ts";
import { findMoves, type LibraryFilter, libraryIndex, NO_FILTER } from "#lib/library/search.ts";
import { plural } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./library.module.css";
import { LibraryFilters } from "./library-filters.tsx";
import { MoveList } from "./move-list.tsx";

interface View {
  readonly filter: LibraryFilter;
  /** The moves that were taken out, instead of those offered. */
  readonly out: boolean;
}

interface LibraryProps {
  readonly moves: Readonly<Record<string, Move>>;
  readonly archived: readonly string[];
  readonly springs: readonly KnownSpring[];
  readonly start: View;
  readonly note: readonly string[];
}

const LIBRARY_KEYS: PageKeysProps = {
  parts: [{ title: "In the search", keys: [["↓, Enter", "into the list of moves"]] }],
};

export function LibraryBrowser({ moves, archived, springs, start, note }: LibraryProps) {
  const [view, setView] = useState<View>(start);
  const list = useRef<HTMLUListElement>(null);
  const shelves = useShelves(moves, archived, springs);
  const index = view.out ? shelves.out : shelves.offered;
  // The field is never late: the list may come a moment after it.
  const filter = useDeferredValue(view.filter);
  const found = useMemo(() => findMoves(index, filter), [index, filter]);
  useAddress(view);

  const all = index.entries.length;
  const setFilter = (next: LibraryFilter) => setView({ ...view, filter: next });
  const intoList = (event: KeyboardEvent) => {
    if (event.key !== "ArrowDown" && event.key !== "Enter") return;
    event.preventDefault();
    list.current?.querySelector("a")?.focus();
  };
  return (
    <>
      <PageKeys of={LIBRARY_KEYS} />
      <details className={`notice ${styles.note}`}>
        <summary>Before you use a move</summary>
        {note.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </details>
      <LibraryFilters filter={view.filter} springs={springs} onChange={setFilter} onSearchKey={intoList} />
      <div className={styles.count}>
        <p role="status">
          {found.length === all ? plural(all, "move") : `${found.length} of ${plural(all, "move")}`}
          {view.out ? " taken out of the library" : ""}
        </p>
        {view.filter === NO_FILTER || filterToQuery(view.filter) === "" ? null : (
          <button type="button" className="button button-quiet" onClick={() => setFilter(NO_FILTER)}>
            Show all
          </button>
        )}
        {archived.length > 0 || view.out ? (
          <button type="button" className="button button-quiet" onClick={() => setView({ ...view, out: !view.out })}>
            {view.out ? "Back to the moves offered" : `${plural(archived.length, "move")} taken out`}
          </button>
        ) : null}
      </div>
      <MoveList ref={list} found={found} query={filterToQuery(filter)} />
      {found.length === 0 ? (
        <p className={styles.none}>
          {all === 0 ? "There is no move here yet." : "No move has all of that. Take away a word or a choice."}
        </p>
      ) : null}
    </>
  );
}

/** The two shelves of the library, made ready to be searched once a library. */
function useShelves(moves: LibraryProps["moves"], archived: readonly string[], springs: readonly KnownSpring[]) {
  return useMemo(() => {
    const names = springNames(springs);
    const gone = new Set(archived);
    const offered = Object.keys(moves).filter((id) => !gone.has(id));
    return { offered: libraryIndex(moves, names, archived), out: libraryIndex(moves, names, offered) };
  }, [moves, archived, springs]);
}

/** Long enough that typing is one change of the address: browsers stop a page that changes it at every key. */
const SETTLED_MS = 150;

/** Replaces the address, so that going back leads to where the person was before the library. */
function useAddress({ filter, out }: View): void {
  const query = filterToQuery(filter);
  const address = `/library${query}${out ? `${query === "" ? "?" : "&"}out=1` : ""}`;
  useEffect(() => {
    const settle = () => {
      clearTimeout(timer);
      if (`${location.pathname}${location.search}` !== address) window.history.replaceState(null, "", address);
    };
    const timer = setTimeout(settle, SETTLED_MS);
    // Before a link is followed: an address that changes afterwards would call the way there off.
    document.addEventListener("click", settle, { capture: true, once: true });
    return () => {
      clearTimeout(timer);
      document.removeEventListener("click", settle, { capture: true });
    };
  }, [address]);
}
