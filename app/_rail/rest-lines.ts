/** The script of a plate that is closed: the line that starts the work first, then the others, as they are read out. */
import { useRef } from "react";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import type { FirstDraft } from "#lib/draft/first-draft.ts";
import type { CueKind, MoveItem } from "#lib/plan/schema.ts";

export interface RestLine {
  readonly kind: CueKind;
  readonly text: string;
}

/** Set-up lines stand in the change as its acts, crew lines on the crew sheet. */
const APART: readonly CueKind[] = ["setup", "crew"];

/** By item, as the same list for as long as it says the same: a plate is drawn again only when something in it did. */
export function useRestLines(
  { plan, rows, total }: SessionSnapshot,
  draft: FirstDraft,
): (item: MoveItem) => readonly RestLine[] {
  const kept = useRef(new Map<string, readonly RestLine[]>());
  const read = readerOf(plan, { rows, total });
  return (item) => {
    const proposed = (draft.get(item.id) ?? []).map(({ line }) => line);
    const lines = [...(item.script ?? []), ...proposed]
      .filter(({ kind, text }) => !APART.includes(kind) && text.trim() !== "")
      .map(({ kind, text }) => ({ kind, text: read(item, text) }))
      .toSorted((a, b) => Number(b.kind === "start") - Number(a.kind === "start"));
    const before = kept.current.get(item.id);
    if (before && sameLines(before, lines)) return before;
    kept.current.set(item.id, lines);
    return lines;
  };
}

const sameLines = (a: readonly RestLine[], b: readonly RestLine[]): boolean =>
  a.length === b.length && a.every((line, i) => line.kind === b[i]?.kind && line.text === b[i]?.text);
