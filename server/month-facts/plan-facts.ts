/**
 * The plans of a month as one reader may know them: of the newest signed edition while it stands, else as they are written. Worked
 * out once for each edition and each state of a draft; when nothing changed they cost one look at the database each.
 */
import type { Db } from "#db/connection.ts";
import { lastSeq } from "#db/repos/doc-log-repo.ts";
import { type EditionHead, newestEdition, readEditionText } from "#db/repos/edition-repo.ts";
import { type PlanRow, readPlanRows } from "#db/repos/plan-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { readPlan } from "#lib/doc/read.ts";
import type { ById, MonthPlan, PlanFacts, UnknownPlan } from "#lib/month/types.ts";
import type { Equipment, Plan } from "#lib/plan/schema.ts";
import { type Actor, canPlan, canReadEditions } from "#lib/policy/can.ts";
import { type PlanSums, planSums } from "#lib/programme/plan-sums.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import { planDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { equipmentIdOf, equipmentSlug, monthSettings } from "./month-settings.ts";

type App = Pick<Springline, "db" | "documents" | "now">;

interface Summed {
  readonly sums: PlanSums;
  readonly equipment: string;
}
interface Cache {
  readonly editions: Map<string, Summed | null>;
  readonly drafts: Map<string, { readonly state: string; readonly moves: unknown; readonly summed: Summed | null }>;
  /** So that the same facts are the same object. */
  readonly facts: Map<string, { readonly of: Summed; readonly key: string; readonly plan: PlanFacts }>;
}
const caches = new WeakMap<Db, Cache>();
/** Editions that are kept: of the size of a summary each. */
const MOST_EDITIONS = 2000;

const UNKNOWN: UnknownPlan = { title: "", known: false };

/** By id. A plan that is gone, or that the reader may not know of, is not known. */
export function planFacts(app: App, actor: Actor, ids: readonly string[]): ById<MonthPlan> {
  const rows = new Map(readPlanRows(app.db, ids).map((row) => [row.id, row]));
  return Object.fromEntries(
    ids.map((id) => {
      const row = rows.get(id);
      return [id, (row && factsFor(app, actor, row)) ?? UNKNOWN];
    }),
  );
}

function factsFor(app: App, actor: Actor, row: PlanRow): PlanFacts | undefined {
  const reads = canPlan(actor, "plan.read", row);
  if (!reads && !canReadEditions(actor, row)) return undefined;
  const edition = standingEdition(app.db, row.id);
  const signed = edition && editionSums(app.db, edition);
  if (edition && signed) return kept(app, row, signed, edition);
  const draft = reads ? draftSums(app, row) : null;
  return draft ? kept(app, row, draft, undefined) : undefined;
}

/** As the floor has it: none while the newest one is withdrawn. */
export function standingEdition(db: Db, planId: string): EditionHead | undefined {
  const edition = newestEdition(db, planId);
  return edition && readWithdrawal(db, planId, edition.number) === undefined ? edition : undefined;
}

function kept(app: App, row: PlanRow, of: Summed, edition: EditionHead | undefined): PlanFacts {
  const room = readRoom(app.db, row.roomId);
  const equipment =
    room && room.equipment.name === of.equipment
      ? equipmentIdOf(room, monthSettings(app))
      : equipmentSlug(of.equipment);
  const key = `${equipment} ${edition?.number ?? ""}`;
  const { facts } = cacheOf(app.db);
  // The signed one and the draft of one plan may be known at once, to different readers.
  const at = `${row.id} ${edition ? "signed" : "draft"}`;
  const there = facts.get(at);
  if (there?.of === of && there.key === key) return there.plan;
  const plan: PlanFacts = {
    ...of.sums,
    signed: edition !== undefined,
    ...(edition ? { edition: edition.number, sha256: edition.hash } : {}),
    equipment,
  };
  facts.set(at, { of, key, plan });
  return plan;
}

/** Null for an edition that is no longer what was signed. */
function editionSums(db: Db, { planId, number, hash }: EditionHead): Summed | null {
  const { editions } = cacheOf(db);
  const known = editions.get(hash);
  if (known !== undefined) return known;
  const text = readEditionText(db, planId, number)?.planJson;
  const summed = text !== undefined && sha256Hex(text) === hash ? sumsOf(JSON.parse(text) as Plan) : null;
  if (editions.size >= MOST_EDITIONS) editions.clear();
  editions.set(hash, summed);
  return summed;
}

/** Null for a plan that cannot be read just now. */
function draftSums(app: App, row: PlanRow): Summed | null {
  const { drafts } = cacheOf(app.db);
  const studio = studioContext(app.db, row.roomId);
  const state = `${lastSeq(app.db, formatDocName(planDoc(row.id)))} ${row.roomId} ${markOf(studio.equipment)}`;
  const known = drafts.get(row.id);
  if (known?.state === state && known.moves === studio.moves) return known.summed;
  const summed = sumsOfDraft(app, row.id, studio);
  drafts.set(row.id, { state, moves: studio.moves, summed });
  return summed;
}

function sumsOfDraft(app: App, id: string, studio: StudioContext): Summed | null {
  try {
    return app.documents.withDoc(planDoc(id), (doc) => sumsOf(readPlan(doc, studio)));
  } catch (error) {
    if (unavailableReason(error) === undefined) throw error;
    return null;
  }
}

const markOf = (equipment: Equipment): string => sha256Hex(JSON.stringify(equipment));

/** Null for a forged or damaged plan that cannot be worked out: a month must not depend on it. */
function sumsOf(plan: Plan): Summed | null {
  try {
    return { sums: planSums(plan), equipment: plan.equipment.name };
  } catch {
    return null;
  }
}

function cacheOf(db: Db): Cache {
  const cache = caches.get(db) ?? { editions: new Map(), drafts: new Map(), facts: new Map() };
  caches.set(db, cache);
  return cache;
}
