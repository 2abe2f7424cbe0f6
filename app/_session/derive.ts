/**
 * Everything the page works out from the document: plan, clock, talk, findings. The server runs the same code, so the page
 * never waits for the network. What did not change stays the same object and is not drawn again.
 */
import type * as Y from "yjs";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import { takenProposals } from "#lib/doc/proposal-marks.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { AnyRule, Finding } from "#lib/rules/define/types.ts";
import { STARTING_RULES } from "#lib/rules/starting-rules.ts";
import type { Served } from "./second-opinion.ts";
import type { Derived } from "./session-types.ts";

/** What to check with, and what was found elsewhere. */
export interface Opinions {
  /** Findings that count for the plan named. */
  readonly served?: Served | null;
  /** What the server found in the plan that the page began with: so that it can be drawn before it is checked here. */
  readonly atStart?: readonly Finding[] | undefined;
}

/** Makes a function that works out one document anew after each change, with the rules that are here by then. */
export function deriver(
  rulesNow: () => readonly AnyRule[],
): (doc: Y.Doc, studio: StudioContext, opinions?: Opinions) => Derived {
  let reader: PlanReader | undefined;
  let rules = rulesNow();
  let analyst = new PlanAnalyst(rules);
  let first: Plan | undefined;
  return (doc, studio, { served, atStart } = {}) => {
    reader ??= new PlanReader(doc);
    if (rules !== rulesNow()) {
      rules = rulesNow();
      analyst = analyst.withRules(rules);
    }
    const { plan } = reader.read(studio);
    first ??= plan;
    const moreToCheck = rules === STARTING_RULES;
    const known = served?.isOf(plan) ? served.findings : moreToCheck && plan === first ? atStart : undefined;
    const found = known && { findings: known, moreToCheck: false };
    const worked = analyst.of(plan);
    const { clock, balance, talk, classTalk, track } = worked;
    return {
      plan,
      rows: clock.rows,
      total: clock.total,
      balance,
      talk: new Map([...talk].filter(([, { seconds }]) => seconds > 0)),
      classTalk,
      track,
      ...(found ?? { findings: worked.findings, moreToCheck }),
      deleted: reader.takenOut,
      taken: takenProposals(doc),
    };
  };
}
