"use client";
/** The state of the form: what is typed, which fields were touched, what is wrong with them, what is kept in the tab. */
import { useEffect, useMemo, useState } from "react";
import { type MoveDraft, moveDraft, readMoveDraft } from "#lib/library/draft.ts";
import type { Fault, MoveFieldPath, ReadMove } from "#lib/library/faults.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Move } from "#lib/plan/schema.ts";
import { draftKey, dropDraft, type KeptDraft, keepDraft, readKept } from "../../_parts/kept/kept-draft.ts";

interface Base {
  readonly move: Move;
  readonly updatedAt: number;
}

export interface MoveFormSetup {
  readonly userId: string;
  /** Null for a new move. */
  readonly id: string | null;
  /** The move as saved in the library; null for a new one. */
  readonly base: Base | null;
  /** What the fields hold at first. */
  readonly start: MoveDraft;
  /** Other moves that are offered, by their names in small letters: one name means one move. */
  readonly names: Readonly<Record<string, string>>;
}

export interface MoveFormState {
  readonly draft: MoveDraft;
  readonly base: Base | null;
  readonly read: ReadMove;
  /** Everything that is wrong, shown at its field or not yet. */
  readonly faults: readonly Fault[];
  readonly dirty: boolean;
  /** What was typed earlier in this tab is back. */
  readonly restored: boolean;
  /** The fault of a field, once it was touched or a save was tried. */
  faultAt(place: MoveFieldPath): string | undefined;
  set(change: Partial<MoveDraft>, place: MoveFieldPath): void;
  /** Shows every fault from now on. */
  showFaults(fromServer?: readonly Fault[]): void;
  /** Goes on from another version of the saved move, with these words. */
  rebase(base: Base, draft: MoveDraft): void;
  /** Forgets what was typed: the fields go back to what they held at first. */
  drop(): void;
  /** It is saved: the tab need not keep it. */
  stored(): void;
}

const ALL = "*";

/** Long because: one state and what can be done with it. */
export function useMoveForm(setup: MoveFormSetup): MoveFormState {
  const { id, names } = setup;
  const key = draftKey(setup.userId, id);
  const words = useKeptWords(key, setup);
  const { draft, base, touched } = words;
  const { units } = draft;
  const [told, setTold] = useState<readonly Fault[]>([]);
  const read = useMemo(() => readMoveDraft(draft, base?.move ?? null), [draft, base]);
  const start = useMemo(() => (base ? moveDraft(base.move, units) : setup.start), [base, setup.start, units]);
  const faults = useMemo(() => {
    const own = read.ok ? [] : read.faults;
    return [...nameFault(draft.name, names), ...own, ...told.filter((t) => !own.some((f) => f.place === t.place))];
  }, [read, told, draft.name, names]);

  const dirty = !sameData(draft, start);

  return {
    ...{ draft, base, read, faults, dirty },
    restored: words.restored,
    faultAt: (place) => (isTouched(touched, place) ? faults.find((f) => f.place === place)?.say : undefined),
    set(change, place) {
      words.write({ draft: { ...draft, ...change }, base, shown: [...new Set([...touched, place])] });
      setTold(told.filter((f) => f.place !== place));
    },
    showFaults(fromServer = []) {
      setTold(fromServer);
      words.write({ draft, base, shown: [ALL] }, dirty);
    },
    rebase: (newBase, newDraft) => words.write({ draft: newDraft, base: newBase, shown: [...touched] }),
    stored: () => dropDraft(key),
    drop() {
      words.drop();
      setTold([]);
    },
  };
}

/** A field counts as touched with every part of it. */
const isTouched = (touched: ReadonlySet<MoveFieldPath>, place: MoveFieldPath): boolean =>
  touched.has(ALL) || [...touched].some((t) => t === place || t.startsWith(`${place}.`));

/** What is typed, the move it changes and the places whose faults are shown, kept in this tab at every letter and found again there. */
function useKeptWords(key: string, setup: MoveFormSetup) {
  const [draft, setDraft] = useState(setup.start);
  const [base, setBase] = useState(setup.base);
  const [touched, setTouched] = useState<ReadonlySet<MoveFieldPath>>(new Set());
  const [restored, setRestored] = useState(false);
  useEffect(() => {
    const kept = readKept(key);
    if (!kept) return;
    setDraft(kept.draft);
    if (kept.base) setBase(kept.base);
    setTouched(new Set(kept.shown));
    setRestored(true);
  }, [key]);
  return {
    draft,
    base,
    touched,
    restored,
    /** `keep`: false while nothing was typed that could be found again. */
    write(next: KeptDraft, keep = true) {
      setDraft(next.draft);
      setBase(next.base);
      setTouched(new Set(next.shown));
      if (keep) keepDraft(key, next);
    },
    drop() {
      dropDraft(key);
      setDraft(setup.start);
      setBase(setup.base);
      setTouched(new Set());
      setRestored(false);
    },
  };
}

function nameFault(name: string, names: MoveFormSetup["names"]): Fault[] {
  const plain = name.trim().toLowerCase().replace(/\s+/g, " ");
  const other = Object.hasOwn(names, plain) ? names[plain] : undefined;
  return other === undefined
    ? []
    : [{ place: "name", say: `There is already a move called ${other}: give this one another name.` }];
}
