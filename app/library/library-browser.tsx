"use client";
/** The library to search. The down arrow goes from the field into the list; the address keeps what was chosen. */
import Link from "next/link";
import { type KeyboardEvent, type ReactNode, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { PageKeys } from "#app/_parts/key-help.tsx";
import { NothingYet } from "#app/_parts/nothing-yet.tsx";
import { filterToQuery } from "#lib/library/filter-query.ts";
import { type KnownSpring, springNames } from "#lib/library/known-springs.ts";
import { findMoves, type LibraryFilter, libraryIndex, NO_FILTER } from "#lib/library/search.ts";
import { plural } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./library.module.css";
import { LIBRARY_COMMANDS, LIBRARY_KEYS } from "./library-commands.ts";
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
  readonly mayAdd: boolean;
}

export function LibraryBrowser({ moves, archived, springs, start, note, mayAdd }: LibraryProps) {
  const [view, setView] = useState<View>(start);
  const [sheet, setSheet] = useState(false);
  const list = useRef<HTMLUListElement>(null);
  const shelves = useShelves(moves, archived, springs);
  const index = view.out ? shelves.out : shelves.offered;
  // Typing is never held up: the list may follow a moment later.
  const filter = useDeferredValue(view.filter);
  const found = useMemo(() => findMoves(index, filter), [index, filter]);
  useAddress(view);

  const all = index.entries.length;
  const setFilter = (next: LibraryFilter) => setView({ ...view, filter: next });
  const intoList = (event: KeyboardEvent) =>
    keyHandler(LIBRARY_COMMANDS, "search", { run: { "into-list": () => list.current?.querySelector("a")?.focus() } })(
      event,
    );
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
      <Count view={view} all={all} found={found.length} archived={archived.length} onView={setView}>
        <SheetButton sheet={sheet} onSheet={setSheet} />
      </Count>
      <MoveList ref={list} found={found} query={filterToQuery(filter)} sheet={sheet} />
      {found.length === 0 ? (
        <NothingYet>
          {all === 0 ? <p>There are no moves here yet.</p> : <NoMatch words={filter.text} mayAdd={mayAdd} />}
        </NothingYet>
      ) : null}
    </>
  );
}

/** What the search looks through, and what to do when the studio does not have the move. */
const NoMatch = ({ words, mayAdd }: { readonly words: string; readonly mayAdd: boolean }) => (
  <>
    <p>
      <b>{words.trim() ? `No move matches “${words.trim()}” and all choices.` : "No move matches all choices."}</b>{" "}
      Remove a word or a choice. The search knows names, muscles, positions and patterns, such as row, triceps,
      kneeling.
    </p>
    <p>
      {mayAdd ? (
        <>
          Is the move new to the studio? <Link href="/library/new">Add a move</Link>.
        </>
      ) : (
        "Is the move new to the studio? Ask a lead to add it."
      )}
    </p>
  </>
);

/** Lines to read, or tiles to look through. */
const SheetButton = ({ sheet, onSheet }: { readonly sheet: boolean; readonly onSheet: (sheet: boolean) => void }) => (
  <button type="button" className="button button-quiet" aria-pressed={sheet} onClick={() => onSheet(!sheet)}>
    Look through figures
  </button>
);

interface CountProps {
  readonly view: View;
  /** How many moves there are on this shelf, and how many of them are found. */
  readonly all: number;
  readonly found: number;
  readonly archived: number;
  readonly onView: (view: View) => void;
  readonly children: ReactNode;
}

function Count({ view, all, found, archived, onView, children }: CountProps) {
  return (
    <div className={styles.count}>
      <p role="status">
        {found === all ? plural(all, "move") : `${found} of ${plural(all, "move")}`}
        {view.out ? " taken out of the library" : ""}
      </p>
      {children}
      {view.filter === NO_FILTER || filterToQuery(view.filter) === "" ? null : (
        <button type="button" className="button button-quiet" onClick={() => onView({ ...view, filter: NO_FILTER })}>
          Show all
        </button>
      )}
      {archived > 0 || view.out ? (
        <button type="button" className="button button-quiet" onClick={() => onView({ ...view, out: !view.out })}>
          {view.out ? "Back to the library" : `${plural(archived, "move")} taken out`}
        </button>
      ) : null}
    </div>
  );
}

/** The moves offered and those taken out, indexed once a library. */
function useShelves(moves: LibraryProps["moves"], archived: readonly string[], springs: readonly KnownSpring[]) {
  return useMemo(() => {
    const names = springNames(springs);
    const gone = new Set(archived);
    const offered = Object.keys(moves).filter((id) => !gone.has(id));
    return { offered: libraryIndex(moves, names, archived), out: libraryIndex(moves, names, offered) };
  }, [moves, archived, springs]);
}

/** Long enough that typing changes the address once: browsers block a page that changes it at every key. */
const SETTLED_MS = 150;

/** Replaces the address, so that Back leads to where the person was before the library. */
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
