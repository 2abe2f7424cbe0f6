/** What can wait for somebody at their desk, and what is most urgent. */
import type { PlanState } from "#lib/protocol/messages.ts";

interface Common {
  readonly title: string;
  /** Since when it waits, ms since the epoch. */
  readonly at: number;
  /** The next class that it is for, as "2026-12-01 07:00" in the studio's own time; null when it stands in no programme. */
  readonly classAt: string | null;
}
interface OfPlan extends Common {
  readonly planId: string;
}

export type Waiting =
  | (OfPlan & {
      readonly kind: "offered";
      readonly round: number;
      readonly byName: string;
      readonly note: string | null;
      /** The lead who has taken it up. */
      readonly reader: { readonly id: string; readonly name: string; readonly since: number } | null;
    })
  | (OfPlan & {
      readonly kind: "returned";
      /** The edition that was withdrawn, where that is how it came back; `byName` and `note` are then of the withdrawal. */
      readonly withdrawn: number | null;
      readonly byName: string | null;
      readonly note: string | null;
      readonly mainPoints: readonly string[];
    })
  | (OfPlan & { readonly kind: "named"; readonly threadId: string; readonly byName: string; readonly words: string })
  | (OfPlan & { readonly kind: "proposed"; readonly proposalId: string; readonly byName: string })
  | (Common & {
      readonly kind: "unsigned";
      /** Null when the slot has no plan. */
      readonly planId: string | null;
      /** Of the programme, "2026-12". */
      readonly month: string;
      readonly state: PlanState | null;
    })
  | (Common & {
      /** A class of theirs is not as the month was signed. */
      readonly kind: "changed";
      readonly planId: null;
      readonly month: string;
      /** The class's id. */
      readonly slot: string;
      readonly words: string;
    })
  | (OfPlan & { readonly kind: "log"; readonly sessionId: string; readonly edition: number });

/** For one and the same class: what holds others up comes first. */
const RANK: Readonly<Record<Waiting["kind"], number>> = {
  changed: 0,
  unsigned: 1,
  offered: 2,
  returned: 3,
  proposed: 4,
  named: 5,
  log: 6,
};

/** What has a class first, the next class on top; then by what it is; then the longest wait. Logs always come last. */
export function byUrgency(a: Waiting, b: Waiting): number {
  const late = Number(a.kind === "log") - Number(b.kind === "log");
  if (late !== 0) return late;
  const [classA, classB] = [a.classAt ?? "9999", b.classAt ?? "9999"];
  if (classA !== classB) return classA < classB ? -1 : 1;
  return RANK[a.kind] - RANK[b.kind] || a.at - b.at || (a.title < b.title ? -1 : 1);
}
