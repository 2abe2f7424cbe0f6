/** The script of a plate that is closed: the line that starts the work first, then the others, as they are read out. */
import { useRef } from "react";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import type { DraftLine, FirstDraft } from "#lib/draft/first-draft.ts";
import type { CueKind, MoveItem } from "#lib/plan/schema.ts";
import { useSteady } from "../_parts/use-steady.ts";

export interface RestLine {
  readonly kind: CueKind;
  readonly text: string;
}

/** Set-up lines stand in the change as its acts, crew lines on the crew sheet. */
const APART: readonly CueKind[] = ["setup", "crew"];

/** Lines without live fields, and what they were read from. */
interface Known {
  readonly item: MoveItem;
  readonly drafted: readonly DraftLine[];
  readonly lines: readonly RestLine[];
}
const NOTHING: readonly DraftLine[] = [];

/** By item, as the same list for as long as it says the same. */
export function useRestLines(
  { plan, rows, total }: SessionSnapshot,
  draft: FirstDraft,
): (item: MoveItem) => readonly RestLine[] {
  const steady = useSteady();
  const read = readerOf(plan, { rows, total });
  const known = useRef(new Map<string, Known>());
  return (item) => {
    const drafted = draft.get(item.id) ?? NOTHING;
    const before = known.current.get(item.id);
    if (before && before.item === item && before.drafted === drafted) return before.lines;
    const proposed = drafted.map(({ line }) => line);
    const lines = [...(item.script ?? []), ...proposed]
      .filter(({ kind, text }) => !APART.includes(kind) && text.trim() !== "")
      .map(({ kind, text }) => ({ kind, text: read(item, text) }))
      .toSorted((a, b) => Number(b.kind === "start") - Number(a.kind === "start"));
    const kept = steady(item.id, lines);
    // With a live field they may read differently without a change of the item.
    if ([...(item.script ?? []), ...proposed].some(({ text }) => text.includes("{"))) known.current.delete(item.id);
    else known.current.set(item.id, { item, drafted, lines: kept });
    return kept;
  };
}
