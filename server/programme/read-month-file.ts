/** A month as its file: the shared document with what the studio knows, for one reader. */
import { lastSeq } from "#db/repos/doc-log-repo.ts";
import { listMembers, namesById } from "#db/repos/people-repo.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { addMonths, dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { type Actor, can, canPlan, canReadEditions } from "#lib/policy/can.ts";
import type { CarriedCoach, EarlierClasses } from "#lib/programme/carried.ts";
import { type MonthStudio, monthFileOf } from "#lib/programme/month-file.ts";
import type { MonthState } from "#lib/programme/month-reader.ts";
import { monthClasses, readMonthState } from "#lib/programme/read.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import { fail, NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { monthRooms, monthSettings, studioDay } from "#server/month-facts/month-settings.ts";
import { planFacts, standingEdition } from "#server/month-facts/plan-facts.ts";
import { monthIsNear } from "./month-range.ts";

type App = Pick<Springline, "db" | "documents" | "now">;

/** As many days before a month as its file holds at most. */
const DAYS_BEFORE = 28;

/** Errors: 401, 403, 404 for a month out of range, 409, 503. Empty for a month that nobody has written in. */
export function readMonthFileOf(app: App, actor: Actor, month: string): Result<MonthFile> {
  if (actor === null) return NOT_SIGNED_IN;
  if (!can(actor, "programme.read")) return NO_RIGHT;
  if (!monthIsNear(month, app.now())) return NOT_FOUND;
  const state = monthStateOf(app, month);
  return state.ok ? ok(monthFileOf(state.value, monthStudioOf(app, actor, month, state.value))) : state;
}

/** What a month held at one point of its history. Feeds, pages and desks ask for the same months all day. */
interface KeptState {
  readonly point: string;
  readonly state: Result<MonthState>;
}
const keptStates = new WeakMap<object, Map<string, KeptState>>();
/** Our own choice: more than a studio looks at in one day. */
const MOST_KEPT = 24;

/** What the document of a month holds. Errors: 409, 503 when it cannot be read. */
export function monthStateOf(app: Pick<App, "db" | "documents">, month: string): Result<MonthState> {
  const name = monthDoc(month);
  const generation = app.documents.generation(name);
  if (generation === undefined) return readStateOf(app, month);
  const point = `${generation} ${lastSeq(app.db, formatDocName(name))}`;
  const states = keptStates.get(app.db) ?? new Map<string, KeptState>();
  keptStates.set(app.db, states);
  const known = states.get(month);
  if (known?.point === point) return known.state;
  const state = readStateOf(app, month);
  if (states.size >= MOST_KEPT) states.clear();
  if (state.ok) states.set(month, { point, state });
  return state;
}

function readStateOf(app: Pick<App, "documents">, month: string): Result<MonthState> {
  try {
    return app.documents.withDoc(monthDoc(month), (doc) => ok(readMonthState(doc)));
  } catch (error) {
    const reason = unavailableReason(error);
    if (reason === undefined) throw error;
    return fail(reason === "newerDocument" ? 409 : 503, `document-${reason}`, CLOSE[reason].text);
  }
}

/** What the studio knows of a month, for one reader: their plans, the people, the rooms, the days before. */
export function monthStudioOf(app: App, actor: Actor, month: string, state?: MonthState): MonthStudio {
  const settings = monthSettings(app);
  const { limits, standards, weights } = settings;
  return {
    uid: settings.uid,
    name: readStudio(app.db)?.name ?? "",
    zone: settings.zone,
    rooms: monthRooms(app),
    coaches: coachesOf(app, state),
    plans: planFacts(app, actor, planIdsFor(app, actor, state)),
    changedAt: settings.updatedAt,
    ...(Object.keys(limits).length > 0 ? { limits } : {}),
    ...(Object.keys(standards).length > 0 ? { standards } : {}),
    ...(Object.keys(weights).length > 0 ? { weights } : {}),
    asOf: studioDay(app),
    earlier: earlierClasses(app, month),
  } as MonthStudio;
}

const TEACH = new Set(["trainee", "coach", "lead"]);

/** Everybody who may be given a class, and by name whoever has left and still stands in one. */
function coachesOf(app: App, state: MonthState | undefined): Record<string, CarriedCoach> {
  const members = listMembers(app.db).filter(({ roles }) => roles.some((role) => TEACH.has(role)));
  const coaches: Record<string, CarriedCoach> = Object.fromEntries(
    members.map(({ id, name, roles }) => [id, { name, roles }]),
  );
  const names = namesById(app.db);
  for (const { coach } of state ? monthClasses(state) : []) {
    const name = typeof coach === "string" && coaches[coach] === undefined ? names.get(coach) : undefined;
    if (typeof coach === "string" && name !== undefined) coaches[coach] = { name, roles: rolesOf(app, coach) };
  }
  return coaches;
}

const rolesOf = (app: App, id: string) => listMembers(app.db).find((person) => person.id === id)?.roles ?? [];

/** The plans that classes name, and every plan that stands signed and that the reader may know. */
function planIdsFor(app: App, actor: Actor, state: MonthState | undefined): string[] {
  const named = (state ? monthClasses(state) : []).flatMap(({ plan }) => (typeof plan === "string" ? [plan] : []));
  const rows = listPlanRows(app.db).filter((row) => row.deletedAt === null && row.archivedAt === null);
  const offered = rows.filter(
    (row) => (canPlan(actor, "plan.read", row) || canReadEditions(actor, row)) && standingEdition(app.db, row.id),
  );
  return [...new Set([...named, ...offered.map(({ id }) => id)])]
    .filter((id) => state?.carried.plans[id] === undefined || rows.some((row) => row.id === id))
    .sort();
}

/** The classes of the 28 days before a month, from the documents of the months before. */
function earlierClasses(app: Pick<App, "db" | "documents">, month: string): EarlierClasses {
  const first = dayNumber(`${month}-01`);
  const known = dateOfDay(first - DAYS_BEFORE);
  const before = monthStateOf(app, addMonths(month, -1));
  const slots = before.ok ? monthClasses(before.value).filter(({ date }) => date >= known) : [];
  return { known, slots: slots.map((slot) => plainSlot(slot)) };
}

/** An earlier month's class as this month's file has it: what is its own month's stays there. */
const plainSlot = ({ note: _, ...slot }: MonthSlot): MonthSlot => slot;
