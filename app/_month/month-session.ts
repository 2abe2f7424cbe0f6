/** A month of the programme as a kind of shared document: what is worked out from it, and how it takes the server's news. */
import type * as Y from "yjs";
import { ActUndo } from "#lib/client/act-undo.ts";
import type { DocDescription } from "#lib/client/doc-session/description.ts";
import type { Edge } from "#lib/client/doc-session/edge.ts";
import { DocSession } from "#lib/client/doc-session/session.ts";
import type { Writer } from "#lib/doc/write.ts";
import { keepSame } from "#lib/memo/keep-same.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import type { ById, MonthPlan } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { monthUndoScopes } from "#lib/programme/layout.ts";
import { type MonthStudio, monthFileOf } from "#lib/programme/month-file.ts";
import { deletedSlots, monthClasses, readerOfMonth } from "#lib/programme/read.ts";
import type { MonthBasis, News, PlansKnown } from "#lib/protocol/messages.ts";
import type { MonthDerived, MonthHeard, MonthSessionProps } from "./month-types.ts";
import { monthValues, monthValueWords } from "./month-values.ts";

export type MonthSession = DocSession<MonthDerived, MonthHeard, ActUndo>;

/** In place of the moment of taking out: adding the class was undone. */
const TAKEN_BACK = 0;

/** The day in a zone, 'YYYY-MM-DD'. */
type Today = (zone: string) => string;

export const openMonth = (props: MonthSessionProps, edge: Edge, today: Today): MonthSession =>
  new DocSession(monthDescription(props, today), edge);

function monthDescription(props: MonthSessionProps, today: Today): DocDescription<MonthDerived, MonthHeard, ActUndo> {
  const derive = derivation();
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
      ...{ studio: props.studio, signed: props.signed, accepted: props.accepted },
    },
    hear: hearNews,
    derive: (doc, heard, before) => derive(doc, heard, before, today(heard.studio.zone)),
    derivesFrom: (heard) => [heard.studio, heard.hidden, today(heard.studio.zone)],
    has: ({ state }, id) => monthClasses(state).some((slot) => slot.id === id),
    makeUndo: monthUndo,
    values: monthValues,
    words: (at, doc, { file }) =>
      monthValueWords(at, doc, { studio: file, plans: props.plans, formats: props.formats }),
  };
}

/** One analyst a page, which keeps what did not change. */
function derivation() {
  const analyst = new MonthAnalyst();
  const studioAt = studioFor();
  return (doc: Y.Doc, heard: MonthHeard, before: MonthDerived | null, today: string): MonthDerived => {
    const reader = readerOfMonth(doc);
    const state = reader.read();
    const file = monthFileOf(state, studioAt(heard, today), before?.file);
    const look = file === before?.file ? before.look : analyst.look(file);
    return { state, file, look, deleted: keepSame(before?.deleted, deletedSlots(reader)), today };
  };
}

/** The studio as of that day and that news, the same object as long as neither changes. */
function studioFor(): (heard: MonthHeard, today: string) => MonthStudio {
  let from: readonly unknown[] = [];
  let made: MonthStudio;
  return ({ studio, hidden }, today) => {
    if (from[0] !== studio || from[1] !== hidden || from[2] !== today) {
      from = [studio, hidden, today];
      made = { ...studio, asOf: today, plans: hiddenPlans(studio.plans, hidden) };
    }
    return made;
  };
}

function hiddenPlans(plans: ById<MonthPlan>, hidden: readonly string[]): ById<MonthPlan> {
  if (hidden.every((id) => own(plans, id)?.known === false)) return plans;
  return { ...plans, ...Object.fromEntries(hidden.map((id) => [id, { title: "", known: false as const }])) };
}

/** Of what did not change the same objects stay. */
function hearNews(heard: MonthHeard, news: News): MonthHeard {
  switch (news.t) {
    case "plans":
      return withPlans(heard, news);
    case "month-basis":
      return { ...heard, studio: keepSame(heard.studio, withBasis(heard.studio, news.basis)) };
    case "month-signed":
      return { ...heard, signed: keepSame(heard.signed, news.signed) };
    case "accepted":
      return { ...heard, accepted: keepSame(heard.accepted, news.accepted) };
    default:
      return heard;
  }
}

function withPlans(heard: MonthHeard, { plans, hidden, facts = {} }: News & PlansKnown): MonthHeard {
  const known = new Map(heard.plans);
  for (const plan of plans) known.set(plan.id, plan);
  for (const id of hidden) known.delete(id);
  const studio = { ...heard.studio, plans: { ...heard.studio.plans, ...facts } };
  return { ...heard, plans: known, hidden: keepSame(heard.hidden, hidden), studio: keepSame(heard.studio, studio) };
}

/** What the studio no longer sets is gone from it, too. */
const withBasis = ({ uid }: MonthStudio, basis: MonthBasis): MonthStudio => ({ uid, ...basis });

function monthUndo({ doc, origin }: Writer, onChange: () => void): ActUndo {
  const scopes = monthUndoScopes(doc);
  return new ActUndo({ doc, origin, onChange, scopes, takenOut: { key: "deleted", value: TAKEN_BACK } });
}
