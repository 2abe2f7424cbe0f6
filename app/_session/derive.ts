/**
 * Everything the page works out from the document: plan, clock, talk, findings. The server runs the same code, so the page
 * never waits for the network. What did not change stays the same object and is not drawn again.
 */
import type * as Y from "yjs";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import { takenProposals } from "#lib/doc/proposal-marks.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { STARTING_RULES } from "#lib/rules/starting-rules.ts";
import type { Served } from "./second-opinion.ts";
import type { Derived } from "./session-types.ts";

/**
 * Makes a function that works out one document anew after each change, with the rules that are here by then. `served`:
 * findings that count for the plan named.
 */
export function deriver(
  rulesNow: () => readonly AnyRule[],
): (doc: Y.Doc, studio: StudioContext, served?: Served | null) => Derived {
  let reader: PlanReader | undefined;
  let rules = rulesNow();
  let analyst = new PlanAnalyst(rules);
  return (doc, studio, served = null) => {
    reader ??= new PlanReader(doc);
    if (rules !== rulesNow()) {
      rules = rulesNow();
      analyst = analyst.withRules(rules);
    }
    const { plan } = reader.read(studio);
    const moreToCheck = rules === STARTING_RULES;
    const { clock, balance, talk, classTalk, track, findings } = analyst.of(plan);
    return {
      plan,
      rows: clock.rows,
      total: clock.total,
      balance,
      talk: new Map([...talk].filter(([, { seconds }]) => seconds > 0)),
      classTalk,
      track,
      ...(served?.isOf(plan) ? { findings: served.findings, moreToCheck: false } : { findings, moreToCheck }),
      deleted: reader.takenOut,
      taken: takenProposals(doc),
    };
  };
}
