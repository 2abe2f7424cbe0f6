/** A month of the programme as a kind of shared document: what is worked out from it, and how it takes the server's news. */
import type * as Y from "yjs";
import { ActUndo } from "#lib/client/act-undo.ts";
import type { DocDescription } from "#lib/client/doc-session/description.ts";
import type { Edge } from "#lib/client/doc-session/edge.ts";
import { DocSession } from "#lib/client/doc-session/session.ts";
import type { Writer } from "#lib/doc/write.ts";
import { monthUndoScopes } from "#lib/programme/layout.ts";
import { type MonthProblem, monthProblems } from "#lib/programme/problems.ts";
import { readDeletedSlots, readMonth } from "#lib/programme/read.ts";
import type { News, PlansKnown } from "#lib/protocol/messages.ts";
import type { MonthDerived, MonthHeard, MonthPageProps } from "./month-types.ts";
import { monthValues, monthValueWords } from "./month-values.ts";

export type MonthSession = DocSession<MonthDerived, MonthHeard, ActUndo>;

/** In place of the moment of taking out: adding the class was undone. */
const TAKEN_BACK = 0;

/** `today`: 'YYYY-MM-DD' in this browser's time zone. */
export const openMonth = (props: MonthPageProps, edge: Edge, today: () => string): MonthSession =>
  new DocSession(monthDescription(props, today), edge);

function monthDescription(
  props: MonthPageProps,
  today: () => string,
): DocDescription<MonthDerived, MonthHeard, ActUndo> {
  return {
    kind: "month",
    key: props.month,
    generation: props.generation,
    me: props.me,
    heard: {
      rights: { writes: props.writes, comments: false },
      present: [],
      plans: new Map([...props.plans, ...props.used.plans].map((plan) => [plan.id, plan])),
      hidden: props.used.hidden,
    },
    hear: (heard, news) => (news.t === "plans" ? withPlans(heard, news) : heard),
    derive: (doc, heard) => derive(doc, heard, today()),
    derivesFrom: (heard) => [heard.plans, heard.hidden, today()],
    has: ({ slots }, id) => slots.some((slot) => slot.id === id),
    makeUndo: monthUndo,
    values: monthValues,
    words: (at, doc) => monthValueWords(at, doc, props),
  };
}

function derive(doc: Y.Doc, { plans, hidden }: MonthHeard, today: string): MonthDerived {
  const { slots } = readMonth(doc);
  const problems = bySlot(monthProblems(slots, { plans: [...plans.values()], hidden }, today));
  return { slots, deleted: readDeletedSlots(doc), problems, today };
}

function withPlans(heard: MonthHeard, { plans, hidden }: News & PlansKnown): MonthHeard {
  const known = new Map(heard.plans);
  for (const plan of plans) known.set(plan.id, plan);
  for (const id of hidden) known.delete(id);
  return { ...heard, plans: known, hidden };
}

function monthUndo({ doc, origin }: Writer, onChange: () => void): ActUndo {
  return new ActUndo({
    doc,
    origin,
    onChange,
    scopes: monthUndoScopes(doc),
    takenOut: { key: "deleted", value: TAKEN_BACK },
  });
}

function bySlot(problems: readonly MonthProblem[]): Map<string, MonthProblem[]> {
  const found = new Map<string, MonthProblem[]>();
  for (const problem of problems) {
    for (const id of problem.slots) found.set(id, [...(found.get(id) ?? []), problem]);
  }
  return found;
}
