/** The copy of a plate that a lead edits: what it is made from, what it holds, and the parts that come of it. Pure. */

import type { CueKind, MoveItem, Pause } from "#lib/plan/schema.ts";
import { parseScriptText } from "#lib/plan/script-text.ts";
import { partsOf } from "#lib/proposal/of-edit.ts";
import type { ProposalPart } from "#lib/proposal/parts.ts";

export interface CopyLine {
  /** Names the line in the page. */
  readonly key: string;
  /** Its place in the script that the copy was made from; null for a new one. */
  readonly from: number | null;
  readonly kind: CueKind;
  readonly text: string;
}

export interface PlateCopy {
  /** The item as it was when the copy was made. */
  readonly base: MoveItem | Pause;
  /** The document's names of its lines. */
  readonly ids: readonly string[];
  /** The item as edited, but for its script. */
  readonly item: MoveItem | Pause;
  readonly lines: readonly CopyLine[];
  readonly note: string;
}

export function newPlateCopy(base: MoveItem | Pause, ids: readonly string[]): PlateCopy {
  const script = base.kind === "move" ? (base.script ?? []) : [];
  const lines = script.map(({ kind, text }, from) => ({ key: `was-${from}`, from, kind, text }));
  return { base, ids, item: base, lines, note: "" };
}

/** A line without words counts as removed, or as not added. */
export function partsOfCopy({ base, ids, item, lines }: PlateCopy): ProposalPart[] {
  const worded = lines.filter(({ text }) => text.trim() !== "").map(({ from, kind, text }) => ({ from, kind, text }));
  return partsOf({ items: [base] }, { items: [item] }, base.id, { lines: worded, ids });
}

/** The name of a live field that does not exist, in the first line that has one. */
export function unknownField(lines: readonly CopyLine[]): string | undefined {
  for (const { text } of lines) {
    const parsed = parseScriptText(text);
    if (!parsed.ok) return parsed.unknown;
  }
  return undefined;
}

export const withLine = (
  copy: PlateCopy,
  key: string,
  change: Partial<Pick<CopyLine, "kind" | "text">>,
): PlateCopy => ({
  ...copy,
  lines: copy.lines.map((line) => (line.key === key ? { ...line, ...change } : line)),
});

export const withoutLine = (copy: PlateCopy, key: string): PlateCopy => ({
  ...copy,
  lines: copy.lines.filter((line) => line.key !== key),
});

export function withAddedLine(copy: PlateCopy, key: string): PlateCopy {
  const kind = copy.lines.at(-1)?.kind ?? "setup";
  return { ...copy, lines: [...copy.lines, { key, from: null, kind, text: "" }] };
}

/** One place up (-1) or down (+1); the same list at its end. */
export function moved<T>(list: readonly T[], at: number, by: -1 | 1): readonly T[] {
  const one = list[at];
  const to = at + by;
  if (one === undefined || to < 0 || to >= list.length) return list;
  const rest = list.filter((_, i) => i !== at);
  return [...rest.slice(0, to), one, ...rest.slice(to)];
}
