/**
 * The plan page's arithmetic: the document read once, its clock and its findings. The same code runs on the server,
 * so the band never waits for the network. Items that did not change keep their identity, so that their rows on the
 * rail are not drawn again.
 */
import type * as Y from "yjs";
import { classClock } from "#lib/clock/clock.ts";
import { readDeleted, readPlan, type StudioContext } from "#lib/doc/read.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { checkPlan } from "#lib/rules/run.ts";
import type { Derived } from "./session-types.ts";

export function derive(doc: Y.Doc, studio: StudioContext, before: Derived | null): Derived {
  const read = readPlan(doc, studio);
  const plan = before === null ? read : { ...read, items: keepSame(read.items, before.plan) };
  const clock = classClock(plan);
  return {
    plan,
    rows: clock.rows,
    total: clock.total,
    findings: checkPlan(plan).findings,
    deleted: readDeleted(doc),
  };
}

function keepSame(items: readonly PlanItem[], before: Plan): PlanItem[] {
  const old = new Map(before.items.map((item) => [item.id, item]));
  return items.map((item) => {
    const was = old.get(item.id);
    return was !== undefined && JSON.stringify(was) === JSON.stringify(item) ? was : item;
  });
}
