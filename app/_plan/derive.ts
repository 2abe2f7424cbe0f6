/**
 * The plan page's arithmetic: the document read once, its clock and its findings. The same code runs on the server,
 * so the band never waits for the network. What did not change keeps its identity, so that its rows on the rail are not
 * drawn again.
 */
import type * as Y from "yjs";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import { Marker } from "#lib/analysis/marks.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import type { Served } from "./second-opinion.ts";
import type { Derived } from "./session-types.ts";

/** Works out what a page knows of one document, again and again. `served`: what counts instead for the plan it names. */
export function deriver(): (doc: Y.Doc, studio: StudioContext, served?: Served | null) => Derived {
  let reader: PlanReader | undefined;
  const analyst = new PlanAnalyst();
  const marker = new Marker();
  return (doc, studio, served = null) => {
    reader ??= new PlanReader(doc);
    const { plan } = reader.read(studio);
    const { clock, balance, talk, classTalk, track, findings } = analyst.of(plan);
    return {
      plan,
      rows: clock.rows,
      total: clock.total,
      balance,
      talk: new Map([...talk].filter(([, { seconds }]) => seconds > 0)),
      classTalk,
      track,
      findings: served && served.plan === marker.plan(plan) ? served.findings : findings,
      deleted: reader.takenOut,
    };
  };
}
