/**
 * What the margin shows and in which order: findings and threads by the item they are about, in plan order, the most
 * serious first. Pure; the page measures and places them.
 */
import { plural } from "#lib/plan/format.ts";
import type { FindingLevel, Plan } from "#lib/plan/schema.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { findingIdentity } from "#lib/rules/finding-identity.ts";
import { levelCounts } from "#lib/rules/level-words.ts";
import { itemOfAnchor } from "./anchor-item.ts";

export type Slip =
  | { readonly kind: "finding"; readonly id: string; readonly about: string | null; readonly finding: Finding }
  | { readonly kind: "thread"; readonly id: string; readonly about: string | null; readonly thread: ThreadView };

export interface SlipInput {
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly threads: readonly ThreadView[];
  readonly showSettled: boolean;
  /** Only slips about this item, or, with null, about the class as a whole; all of them when left out. */
  readonly only?: string | null;
}

const WEIGHT: Readonly<Record<FindingLevel, number>> = { must: 0, look: 1, info: 3 };
const THREAD_WEIGHT = 2;

/**
 * Slips in reading order. A thread about an item that was taken out comes first, one on a finding right after that finding.
 */
export function slipsOf({ plan, findings, threads, showSettled, only }: SlipInput): Slip[] {
  const place = new Map(plan.items.map((item, i) => [item.id, i]));
  const known = (id: string | null | undefined) => (id !== null && id !== undefined && place.has(id) ? id : null);
  const seen = new Map<string, number>();
  const slips: Slip[] = [
    ...findings.map((finding): Slip => {
      const id = findingId(finding, seen);
      return { kind: "finding", id, about: known(finding.items[0]), finding };
    }),
    ...threads
      .filter((thread) => showSettled || !thread.settled)
      .map((thread): Slip => ({ kind: "thread", id: thread.id, about: known(itemOfAnchor(thread.anchor)), thread })),
  ];
  const rank = (slip: Slip) => (slip.about === null ? -1 : (place.get(slip.about) ?? -1));
  const sorted = slips
    .filter((slip) => only === undefined || isAbout(slip, only))
    .map((slip, i) => ({ slip, i }))
    .sort((a, b) => rank(a.slip) - rank(b.slip) || weight(a.slip) - weight(b.slip) || a.i - b.i)
    .map(({ slip }) => slip);
  return underTheirFindings(sorted);
}

/** A thread on something that is not found any more stays among the threads of its item. */
function underTheirFindings(sorted: readonly Slip[]): Slip[] {
  const found = new Set(
    sorted.flatMap((slip) => (slip.kind === "finding" && slip.finding.key ? [slip.finding.key] : [])),
  );
  const under = new Map<string, Slip[]>();
  const rest = sorted.filter((slip) => {
    if (slip.kind !== "thread" || slip.thread.anchor.kind !== "finding") return true;
    const { key } = slip.thread.anchor;
    if (!found.has(key)) return true;
    under.set(key, [...(under.get(key) ?? []), slip]);
    return false;
  });
  if (under.size === 0) return rest;
  return rest.flatMap((slip) => {
    const key = slip.kind === "finding" ? slip.finding.key : undefined;
    const threads = key === undefined ? [] : (under.get(key) ?? []);
    if (key !== undefined) under.delete(key);
    return [slip, ...threads];
  });
}

const isAbout = (slip: Slip, itemId: string | null): boolean =>
  itemId === null ? slip.about === null : isAboutItem(slip, itemId);

const isAboutItem = (slip: Slip, itemId: string): boolean =>
  slip.kind === "finding" ? slip.finding.items.includes(itemId) : threadIsAbout(slip.thread, itemId);

const threadIsAbout = ({ anchor }: ThreadView, itemId: string): boolean =>
  anchor.kind === "finding" ? anchor.itemIds.includes(itemId) : itemOfAnchor(anchor) === itemId;

/** Stable from one check to the next, so that a slip keeps its place, its focus and what was opened in it. */
function findingId(finding: Finding, seen: Map<string, number>): string {
  const key = findingIdentity(finding);
  const nth = seen.get(key) ?? 0;
  seen.set(key, nth + 1);
  return nth === 0 ? key : `${key}:${nth}`;
}

const weight = (slip: Slip): number => (slip.kind === "finding" ? WEIGHT[slip.finding.level] : THREAD_WEIGHT);

/**
 * "2 must fix, 1 look again, 3 for information, 3 open threads": the same counts as the band's; "nothing found" where
 * there are none.
 */
export function countWords(findings: readonly Finding[], threads: readonly ThreadView[]): string {
  const open = threads.filter((thread) => !thread.settled).length;
  const words = [
    ...levelCounts(findings).map((count) => count.words),
    open > 0 ? plural(open, "open thread") : "",
  ].filter((part) => part !== "");
  return words.length === 0 ? "nothing found" : words.join(", ");
}
