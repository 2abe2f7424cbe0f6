/**
 * The plan page's arithmetic: the document read once, its clock and its findings. The same code runs on the server,
 * so the band never waits for the network. Items that did not change keep their identity, so that their rows on the
 * rail are not drawn again.
 */
import type * as Y from "yjs";
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import { readDeleted, readPlan, type StudioContext } from "#lib/doc/read.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { checkPlan } from "#lib/rules/run.ts";
import { classTalk, talkByItem } from "#lib/talk/talk.ts";
import type { Derived } from "./session-types.ts";

export function derive(doc: Y.Doc, studio: StudioContext, before: Derived | null): Derived {
  const read = readPlan(doc, studio);
  const plan = before === null ? read : { ...read, items: keepSame(read.items, before.plan) };
  const clock = classClock(plan);
  return {
    plan,
    rows: clock.rows,
    total: clock.total,
    balance: balance(plan),
    talkShares: talkShares(plan),
    talkShare: classTalk(plan).share,
    findings: checkPlan(plan).findings,
    deleted: readDeleted(doc),
  };
}

function talkShares(plan: Plan): Record<string, number> {
  const shares: Record<string, number> = {};
  for (const [id, { seconds, roomSeconds }] of talkByItem(plan)) {
    if (seconds > 0) shares[id] = roomSeconds > 0 ? seconds / roomSeconds : Number.POSITIVE_INFINITY;
  }
  return shares;
}

function keepSame(items: readonly PlanItem[], before: Plan): PlanItem[] {
  const old = new Map(before.items.map((item) => [item.id, item]));
  return items.map((item) => {
    const was = old.get(item.id);
    return was !== undefined && JSON.stringify(was) === JSON.stringify(item) ? was : item;
  });
}
