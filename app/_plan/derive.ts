/**
 * The plan page's arithmetic: the document read once, its clock and its findings. The same code runs on the server,
 * so the band never waits for the network. Items that did not change keep their identity, so that their rows on the
 * rail are not drawn again.
 */
import type * as Y from "yjs";
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import { classTalk } from "#lib/cues/class-talk.ts";
import type { StudioContext } from "#lib/doc/lent.ts";
import { readDeleted, readPlan } from "#lib/doc/read.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { checkPlan } from "#lib/rules/run.ts";
import { talkByItem } from "#lib/talk/talk.ts";
import type { Derived } from "./session-types.ts";

export function derive(doc: Y.Doc, studio: StudioContext, before: Derived | null): Derived {
  const read = readPlan(doc, studio);
  const plan = before === null ? read : { ...read, items: keepSame(read.items, before.plan) };
  const clock = classClock(plan);
  const check = checkPlan(plan);
  return {
    plan,
    rows: clock.rows,
    total: clock.total,
    balance: balance(plan),
    talk: said(plan),
    track: check.track,
    classTalk: classTalk(check.track, clock.total),
    findings: check.findings,
    deleted: readDeleted(doc),
  };
}

const said = (plan: Plan): Derived["talk"] => new Map([...talkByItem(plan)].filter(([, { seconds }]) => seconds > 0));

function keepSame(items: readonly PlanItem[], before: Plan): PlanItem[] {
  const old = new Map(before.items.map((item) => [item.id, item]));
  return items.map((item) => {
    const was = old.get(item.id);
    return was !== undefined && JSON.stringify(was) === JSON.stringify(item) ? was : item;
  });
}
