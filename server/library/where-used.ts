/**
 * Where a move is used: in plans, in signed editions, and in classes that have not ended. Titles are only shown to people who may
 * read the plan; to others it is only counted.
 */

import type { Db } from "#db/connection.ts";
import { lastSeq } from "#db/repos/doc-log-repo.ts";
import { listMonths } from "#db/repos/month-repo.ts";
import { editionsUsing } from "#db/repos/move-repo.ts";
import { listPlanRows, type PlanRow } from "#db/repos/plan-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { monthOf } from "#lib/calendar/days.ts";
import { momentOf } from "#lib/calendar/zone.ts";
import { type MoveUse, movesUsed } from "#lib/doc/read.ts";
import { type Actor, can, canPlan } from "#lib/policy/can.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { readMonth } from "#lib/programme/read.ts";
import { type DocName, formatDocName, type PlanState } from "#lib/protocol/messages.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import { monthDoc, planDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { listPlanEditions } from "#server/editions/editions.ts";
import { studioZone, wallClockText } from "#server/month-facts/month-settings.ts";

/** How long this may block the process at a stretch, in ms: not noticeable while typing. */
const SLICE_MS = 12;
const DAY_MS = 86_400_000;
type App = Pick<Springline, "db" | "documents" | "now">;

interface PlanUse extends MoveUse {
  readonly planId: string;
  readonly title: string;
  readonly state: PlanState;
}
interface EditionUseView {
  readonly planId: string;
  readonly number: number;
  /** As signed. */
  readonly title: string;
  /** ms since the epoch. */
  readonly signedAt: number;
}
interface ClassUse {
  /** Null when the asker may not read the plan. */
  readonly planId: string | null;
  readonly title: string | null;
  /** 'YYYY-MM-DD' */
  readonly date: string;
  /** 'HH:MM' */
  readonly time: string;
  readonly roomName: string | null;
}

export interface WhereUsed {
  readonly plans: readonly PlanUse[];
  readonly editions: readonly EditionUseView[];
  /** Those that have not ended, by date and time. */
  readonly classes: readonly ClassUse[];
  /** How many of each the asker may not read. */
  readonly hidden: { readonly plans: number; readonly editions: number; readonly classes: number };
  /** How many plans could not be read. */
  readonly unread: number;
}

/** Without deleted plans. An unknown move is used nowhere. Errors: 403 no-right. */
export async function whereUsed(app: Springline, actor: Actor, moveId: string): Promise<Result<WhereUsed>> {
  if (!can(actor, "library.read")) return NO_RIGHT;
  const rows = listPlanRows(app.db).filter((row) => row.deletedAt === null);
  const looks = await looksAt(app, rows);
  const inPlans = looks.flatMap(({ row, uses }) => {
    const use = uses?.get(moveId);
    return use ? [{ row, use }] : [];
  });
  const readable = inPlans.filter(({ row }) => canPlan(actor, "plan.read", row));
  const editions = editionsUsing(app.db, moveId);
  const mayRead = readersOf(app, actor);
  const shown = editions.filter((edition) => mayRead(edition.planId));
  const users = new Set([...inPlans.map(({ row }) => row.id), ...editions.map((edition) => edition.planId)]);
  const titles = new Map([
    ...shown.toReversed().map((edition) => [edition.planId, edition.title] as const),
    ...rows.filter((row) => canPlan(actor, "plan.read", row)).map((row) => [row.id, row.title] as const),
  ]);
  const slots = upcomingSlots(app, users);
  const classes = can(actor, "programme.read") ? slots.map((slot) => classUse(app, slot, titles)) : [];
  return ok({
    plans: readable.map(({ row, use }) => ({ planId: row.id, title: row.title, state: row.state, ...use })),
    editions: shown,
    classes,
    hidden: {
      plans: inPlans.length - readable.length,
      editions: editions.length - shown.length,
      classes: slots.length - classes.length,
    },
    unread: looks.filter(({ uses }) => uses === null).length,
  });
}

interface Look {
  readonly row: PlanRow;
  /** Null when it could not be read. */
  readonly uses: ReadonlyMap<string, MoveUse> | null;
}

/** Reading hundreds of plans for the first time takes long, so other work is let through in between. */
async function looksAt(app: App, rows: readonly PlanRow[]): Promise<Look[]> {
  const looks: Look[] = [];
  let from = performance.now();
  for (const row of rows) {
    looks.push({ row, uses: usesOf(app, row) });
    if (performance.now() - from < SLICE_MS) continue;
    await new Promise((resolve) => setImmediate(resolve));
    from = performance.now();
  }
  return looks;
}

/** Whether the asker may read the editions of a plan; looked up once per plan. */
function readersOf(app: Springline, actor: Actor): (planId: string) => boolean {
  const known = new Map<string, boolean>();
  return (planId) => {
    const may = known.get(planId) ?? listPlanEditions(app, actor, planId).ok;
    known.set(planId, may);
    return may;
  };
}

function classUse(app: App, slot: Slot, titles: ReadonlyMap<string, string>): ClassUse {
  const title = slot.planId === null ? undefined : titles.get(slot.planId);
  const roomName = listStudioRooms(app.db).find((room) => room.id === slot.roomId)?.name ?? null;
  const { date, time } = slot;
  return { planId: title === undefined ? null : slot.planId, title: title ?? null, date, time, roomName };
}

interface Looked {
  /** The last row of the document's log when it was read. */
  readonly seq: number;
  readonly uses: ReadonlyMap<string, MoveUse>;
}
const looked = new WeakMap<Db, Map<string, Looked>>();

/** Cached per document: opening hundreds of documents each time would take seconds. Null when it could not be read. */
function usesOf(app: App, row: PlanRow): ReadonlyMap<string, MoveUse> | null {
  const cache = looked.get(app.db) ?? new Map<string, Looked>();
  looked.set(app.db, cache);
  const have = cache.get(row.id);
  const seq = lastSeq(app.db, formatDocName(planDoc(row.id)));
  if (have?.seq === seq) return have.uses;
  const uses = read(app, planDoc(row.id), movesUsed);
  if (uses) cache.set(row.id, { seq, uses });
  return uses;
}

/** Slots of today and later that have not ended and use one of these plans, by date and time. */
function upcomingSlots(app: App, planIds: ReadonlySet<string>): Slot[] {
  const zone = studioZone(app);
  const at = app.now();
  // A class may run past midnight, and past the end of its month.
  const yesterday = wallClockText(at - DAY_MS, zone).slice(0, 10);
  return listMonths(app.db, monthOf(yesterday)).flatMap((month) => {
    const slots = read(app, monthDoc(month), (doc) => readMonth(doc).slots) ?? [];
    return slots.filter(
      (slot) => slot.date >= yesterday && slot.planId !== null && planIds.has(slot.planId) && endOf(slot, zone) > at,
    );
  });
}

/** ms since the epoch. */
const endOf = ({ date, time, minutes }: Slot, zone: string): number =>
  momentOf(Date.parse(`${date}T${time}Z`), zone).at + minutes * 60_000;

function read<T>(app: App, name: DocName, look: Parameters<typeof app.documents.withDoc<T>>[1]): T | null {
  try {
    return app.documents.withDoc(name, look);
  } catch (error) {
    if (unavailableReason(error) === undefined) throw error;
    return null;
  }
}
