/**
 * Checks plans on whichever thread it runs. It reads documents from the log on disk and keeps each one with everything
 * worked out from it, so that the next check only costs what was written since. Never writes.
 */
import type * as Y from "yjs";
import { applyUpdate } from "yjs";
import type { Db } from "#db/connection.ts";
import { lastSeq, readGeneration, rowsAfter } from "#db/repos/doc-log-repo.ts";
import { newestEditionPlan } from "#db/repos/edition-repo.ts";
import { type PlanRow, readPlanRow } from "#db/repos/plan-repo.ts";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import { Marker } from "#lib/analysis/marks.ts";
import { classStrip, stripText } from "#lib/clock/class-strip.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import { findableLines } from "#lib/find/plan-lines.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { RULE_CRASHED } from "#lib/rules/findings.ts";
import { RULES } from "#lib/rules/registry.ts";
import type { EventLog } from "#server/base/log.ts";
import type { CheckAnswer } from "#server/context/checks.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { hasGap, loadDoc } from "#server/doc-log/stored-doc.ts";
import { type PlanStudio, planStudio } from "#server/studio-data/plan-studio.ts";
import { differsFromEdition } from "./differs-from-edition.ts";

interface OpenPlan {
  readonly doc: Y.Doc;
  readonly reader: PlanReader;
  readonly analyst: PlanAnalyst;
  readonly marker: Marker;
  readonly generation: string;
  seq: number;
}

/** Documents kept in memory, the most recently used. Each takes about a megabyte. */
const MOST_OPEN = 250;
/** Findings that go to the thread that serves people though nobody asked: about 100 kB. */
const MOST_SENT = 300;

export class CheckDesk {
  private readonly db: Db;
  private readonly log: EventLog;
  private readonly open = new Map<string, OpenPlan>();
  private readonly studios = new Map<string, PlanStudio>();

  constructor(db: Db, log: EventLog) {
    this.db = db;
    this.log = log;
  }

  /** The plan as it is on disk. Null when there is none, or when this program cannot read it. */
  check(planId: string, withFindings: boolean): CheckAnswer | null {
    // One transaction, so that everything is read in the same state.
    return this.db.raw.transaction(() => this.checkNow(planId, withFindings)).deferred();
  }

  private checkNow(planId: string, withFindings: boolean): CheckAnswer | null {
    const row = readPlanRow(this.db, planId);
    const plan = row && this.upToDate(planId);
    if (!row || !plan) return null;
    const studio = this.studioOf(row.roomId);
    const { plan: read } = plan.reader.read(studio);
    const { findings, clock } = plan.analyst.of(read);
    return {
      planId,
      seq: plan.seq,
      generation: plan.generation,
      studioMark: studio.mark,
      planMark: plan.marker.plan(read),
      findingsMark: plan.marker.findings(findings),
      counts: countsOf(findings),
      strip: stripText(classStrip(read, clock.rows)),
      writtenOn: this.writtenOn(row, plan.doc),
      lines: findableLines(read, clock),
      ...(withFindings || findings.length <= MOST_SENT ? { findings } : {}),
    };
  }

  private writtenOn(row: PlanRow, doc: Y.Doc): string | null {
    if (row.state !== "signed-off") return null;
    const signed = newestEditionPlan(this.db, row.id);
    return signed && differsFromEdition(signed, doc) ? signed.hash : null;
  }

  /** The same object while nothing changes, so that values lent from it keep their identity. */
  private studioOf(roomId: string): PlanStudio {
    const now = planStudio(this.db, roomId);
    const known = this.studios.get(roomId);
    if (known?.mark === now.mark) return known;
    this.studios.set(roomId, now);
    return now;
  }

  private upToDate(planId: string): OpenPlan | undefined {
    const found = this.open.get(planId);
    this.open.delete(planId);
    const plan = (found && this.caughtUp(planId, found)) ?? this.load(planId);
    if (!plan) return undefined;
    this.open.set(planId, plan);
    for (const [id, oldest] of this.open) {
      if (this.open.size <= MOST_OPEN) break;
      this.open.delete(id);
      oldest.doc.destroy();
    }
    return plan;
  }

  /** Undefined when the log does not continue from where this document was read to. */
  private caughtUp(planId: string, plan: OpenPlan): OpenPlan | undefined {
    const name = formatDocName(planDoc(planId));
    const rows = readGeneration(this.db, name) === plan.generation ? rowsAfter(this.db, name, plan.seq) : undefined;
    try {
      if (!rows) throw new Error("the log does not continue from here");
      plan.doc.transact(() => {
        for (const { bytes } of rows) applyUpdate(plan.doc, bytes);
      });
      if (hasGap(plan.doc)) throw new Error("something between the updates is missing");
      plan.seq = rows.at(-1)?.seq ?? plan.seq;
      return plan;
    } catch (err) {
      this.log.info({ plan: planId, err }, "a plan is read again from the start");
      plan.doc.destroy();
      return undefined;
    }
  }

  private load(planId: string): OpenPlan | undefined {
    const name = formatDocName(planDoc(planId));
    const loaded = loadDoc(this.db, name, this.log);
    if (!loaded) return undefined;
    const { doc, generation } = loaded;
    if (migrate(doc).kind === "newer") {
      doc.destroy();
      return undefined;
    }
    const kept = { reader: new PlanReader(doc), analyst: new PlanAnalyst(RULES), marker: new Marker() };
    return { doc, generation, ...kept, seq: lastSeq(this.db, name) };
  }
}

function countsOf(findings: readonly Finding[]): CheckAnswer["counts"] {
  const counts = { must: 0, look: 0, info: 0 };
  for (const { level, rule } of findings) if (rule !== RULE_CRASHED) counts[level]++;
  return counts;
}
