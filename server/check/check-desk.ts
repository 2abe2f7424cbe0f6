/**
 * Where plans are checked: reads documents from the log on disk, on whatever thread it stands, and keeps each that it has
 * read with all that was worked out from it, so that the next check costs what was written since. Never writes.
 */
import type * as Y from "yjs";
import { applyUpdate } from "yjs";
import type { Db } from "#db/connection.ts";
import { lastSeq, readGeneration, rowsAfter } from "#db/repos/doc-log-repo.ts";
import { newestEditionPlan } from "#db/repos/edition-repo.ts";
import { type PlanRow, readPlanRow } from "#db/repos/plan-repo.ts";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import { Marker } from "#lib/analysis/marks.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { RULE_CRASHED } from "#lib/rules/findings.ts";
import { planDoc } from "#server/plans/plan-doc.ts";
import { type PlanStudio, planStudio } from "#server/plans/plan-studio.ts";
import { differsFromEdition } from "#server/plans/written-on.ts";
import type { SyncLog } from "#server/sync/host.ts";
import { hasGap, loadDoc } from "#server/sync/stored-doc.ts";

/** What a check answers, as plain data. */
export interface CheckAnswer {
  readonly planId: string;
  /** Which state of the document was read: the log's last row, and the history it belongs to. */
  readonly seq: number;
  readonly generation: string;
  /** What it was read with. */
  readonly studioMark: string;
  /** Names of the plan and of its findings (lib/analysis/marks). Null: a damaged document of which none can be made. */
  readonly planMark: string | null;
  readonly findingsMark: string | null;
  /** Checks that broke are not counted. */
  readonly counts: Readonly<Record<FindingLevel, number>>;
  /** Of a signed plan: the hash of its newest edition where the document says something else than that. */
  readonly writtenOn: string | null;
  /** Left out where nobody asked for them. */
  readonly findings?: readonly Finding[];
}

interface OpenPlan {
  readonly doc: Y.Doc;
  readonly reader: PlanReader;
  readonly analyst: PlanAnalyst;
  readonly marker: Marker;
  readonly generation: string;
  seq: number;
}

/** Documents kept open, the last used. Each takes a megabyte or so. */
const MOST_OPEN = 250;

export class CheckDesk {
  private readonly db: Db;
  private readonly log: SyncLog;
  private readonly open = new Map<string, OpenPlan>();
  private readonly studios = new Map<string, PlanStudio>();

  constructor(db: Db, log: SyncLog) {
    this.db = db;
    this.log = log;
  }

  /** The plan as it is on disk. Null when there is none, or when it cannot be read by this program. */
  check(planId: string, withFindings: boolean): CheckAnswer | null {
    // One moment of the database for all that is read.
    return this.db.raw.transaction(() => this.checkNow(planId, withFindings)).deferred();
  }

  private checkNow(planId: string, withFindings: boolean): CheckAnswer | null {
    const row = readPlanRow(this.db, planId);
    const plan = row && this.upToDate(planId);
    if (!row || !plan) return null;
    const studio = this.studioOf(row.roomId);
    const { plan: read } = plan.reader.read(studio);
    const { findings } = plan.analyst.of(read);
    return {
      planId,
      seq: plan.seq,
      generation: plan.generation,
      studioMark: studio.mark,
      planMark: plan.marker.plan(read),
      findingsMark: plan.marker.findings(findings),
      counts: countsOf(findings),
      writtenOn: this.writtenOn(row, plan.doc),
      ...(withFindings ? { findings } : {}),
    };
  }

  private writtenOn(row: PlanRow, doc: Y.Doc): string | null {
    if (row.state !== "signed-off") return null;
    const signed = newestEditionPlan(this.db, row.id);
    return signed && differsFromEdition(signed, doc) ? signed.hash : null;
  }

  /** The same studio while it is the same, so that what is lent from it keeps its identity. */
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

  /** Undefined when the log goes on somewhere else than where this one was read to. */
  private caughtUp(planId: string, plan: OpenPlan): OpenPlan | undefined {
    const name = formatDocName(planDoc(planId));
    const rows = readGeneration(this.db, name) === plan.generation ? rowsAfter(this.db, name, plan.seq) : undefined;
    try {
      if (!rows) throw new Error("the log does not go on from here");
      plan.doc.transact(() => {
        for (const { bytes } of rows) applyUpdate(plan.doc, bytes);
      });
      if (hasGap(plan.doc)) throw new Error("something is missing between the updates");
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
    const kept = { reader: new PlanReader(doc), analyst: new PlanAnalyst(), marker: new Marker() };
    return { doc, generation, ...kept, seq: lastSeq(this.db, name) };
  }
}

function countsOf(findings: readonly Finding[]): CheckAnswer["counts"] {
  const counts = { must: 0, look: 0, info: 0 };
  for (const { level, rule } of findings) if (rule !== RULE_CRASHED) counts[level]++;
  return counts;
}
