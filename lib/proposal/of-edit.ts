/** The parts that an edited copy of a plate differs by. */
import { movedIds } from "#lib/plan/moved.ts";
import type { MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { blockIds, orderPart } from "./block-order.ts";
import { type LineRef, type LineWords, type PartOf, PROPOSED_FIELDS, type ProposalPart } from "./parts.ts";
import { says } from "./script-steps.ts";

/** A line of an edited script; `from` is its place in the script before, null for a new one. */
export interface EditedLine extends LineWords {
  readonly from: number | null;
}

export interface Known {
  /** The edited script, where it is known which line came from which. */
  readonly lines?: readonly EditedLine[];
  /** The document's names of the lines before. */
  readonly ids?: readonly string[] | undefined;
}

type Items = Pick<Plan, "items">;

/**
 * What turns one item of `before` into the same of `after`; for a heading, the order of its block; for null, the order
 * before the first heading. The ids of the parts are the same for the same changes.
 */
export function partsOf(before: Items, after: Items, itemId: string | null, known: Known = {}): ProposalPart[] {
  const was = before.items.find(({ id }) => id === itemId);
  const is = after.items.find(({ id }) => id === itemId);
  if (itemId === null || was?.kind === "heading") {
    const order = orderPart(itemId, blockIds(before, itemId) ?? [], blockIds(after, itemId) ?? []);
    return order ? [order] : [];
  }
  if (!was || !is || was.kind !== is.kind) return [];
  const fields = fieldParts(was, is);
  if (was.kind !== "move" || is.kind !== "move") return fields;
  return [...fields, ...springParts(was, is), ...scriptParts(was, known.lines ?? aligned(was, is), known.ids)];
}

function fieldParts(was: PlanItem, is: PlanItem): ProposalPart[] {
  return PROPOSED_FIELDS.flatMap((field) => {
    const of = (item: PlanItem) => (item as Partial<MoveItem>)[field] ?? null;
    const [from, to] = [of(was), of(is)];
    if (from === to || (field === "offsetMm" && (from ?? 0) === (to ?? 0))) return [];
    return [{ id: field, item: was.id, kind: "field", field, was: from, becomes: to } as ProposalPart];
  });
}

function springParts(was: MoveItem, is: MoveItem): ProposalPart[] {
  const springs = [...new Set([...Object.keys(was.springs), ...Object.keys(is.springs)])].sort();
  const on = (item: MoveItem, spring: string) =>
    Object.hasOwn(item.springs, spring) ? (item.springs[spring] ?? 0) : 0;
  return springs.flatMap((spring) => {
    const [from, to] = [on(was, spring), on(is, spring)];
    return from === to
      ? []
      : [{ id: `spring.${spring}`, item: was.id, kind: "spring", spring, was: from, becomes: to }];
  });
}

function scriptParts(
  item: MoveItem,
  edited: readonly EditedLine[],
  ids: readonly string[] | undefined,
): ProposalPart[] {
  const script = item.script ?? [];
  const ref = (index: number | null): LineRef | null => {
    const line = index === null ? undefined : script[index];
    if (index === null || !line) return null;
    const id = ids?.[index];
    return { index, kind: line.kind, text: line.text, ...(id === undefined ? {} : { id }) };
  };
  const kept = edited.flatMap(({ from }) => (from === null ? [] : [from]));
  const moved = movedIds(
    script.map((_, i) => String(i)),
    kept.map(String),
  );
  const stays = (from: number | null): from is number => from !== null && !moved.has(String(from));
  const parts: ProposalPart[] = [];
  const added: LineWords[] = [];
  for (const [place, { from, kind, text }] of edited.entries()) {
    const becomes = { kind, text };
    const after = ref(edited.slice(0, place).findLast((line) => stays(line.from))?.from ?? null);
    const line = ref(from);
    if (line === null) {
      const same = [...script, ...added].filter((other) => says(other, becomes)).length;
      parts.push({ id: `added.${added.length + 1}`, item: item.id, kind: "line-added", after, becomes, same });
      added.push(becomes);
      continue;
    }
    if (!says(line, becomes)) parts.push({ id: `line.${line.index}`, item: item.id, kind: "line", line, becomes });
    if (stays(from)) continue;
    const before = ref(edited.slice(place + 1).find((other) => stays(other.from))?.from ?? null);
    parts.push({ id: `moved.${line.index}`, item: item.id, kind: "line-moved", line, after, before });
  }
  return [...parts, ...removedParts(item.id, script, kept, ref)];
}

function removedParts(
  item: string,
  script: readonly ScriptLine[],
  kept: readonly number[],
  ref: (index: number) => LineRef | null,
) {
  return script.flatMap((_, index): PartOf<"line-removed">[] => {
    const line = kept.includes(index) ? null : ref(index);
    return line ? [{ id: `removed.${index}`, item, kind: "line-removed", line }] : [];
  });
}

/** Which line came from which, told by equal lines; lines between them are taken in pairs. */
function aligned(was: MoveItem, is: MoveItem): EditedLine[] {
  const [old, now] = [was.script ?? [], is.script ?? []];
  const equal = equalLines(old, now);
  return now.map((line, j) => {
    const { kind, text } = line;
    const exact = equal.find(([, place]) => place === j);
    if (exact) return { kind, text, from: exact[0] };
    const before = equal.findLast(([, place]) => place < j) ?? [-1, -1];
    const next = equal.find(([, place]) => place > j)?.[0] ?? old.length;
    const from = before[0] + (j - before[1]);
    return { kind, text, from: from < next ? from : null };
  });
}

/** Pairs of places of equal lines, in the order of both: a longest common subsequence. */
function equalLines(old: readonly ScriptLine[], now: readonly ScriptLine[]): (readonly [number, number])[] {
  const best = Array.from({ length: old.length + 1 }, () => new Array<number>(now.length + 1).fill(0));
  const at = (i: number, j: number) => best[i]?.[j] ?? 0;
  const isEqual = (i: number, j: number) => {
    const [a, b] = [old[i], now[j]];
    return a !== undefined && b !== undefined && says(a, b);
  };
  for (let i = old.length - 1; i >= 0; i--)
    for (let j = now.length - 1; j >= 0; j--) {
      const row = best[i];
      if (row) row[j] = isEqual(i, j) ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  const pairs: (readonly [number, number])[] = [];
  for (let [i, j] = [0, 0]; i < old.length && j < now.length; ) {
    if (isEqual(i, j)) pairs.push([i++, j++]);
    else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  }
  return pairs;
}
