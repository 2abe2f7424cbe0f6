/**
 * A month as its file: what its document holds, put together with what the studio knows. Pure, and the same in the page and on the
 * server. Parts that did not change stay the same objects, so that whoever works something out from them can go by identity.
 */
import { keepSame } from "#lib/memo/keep-same.ts";
import { Kept } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import type { ToldNumber } from "#lib/month/ics/promised.ts";
import {
  type ById,
  type FillWanted,
  type FillWeights,
  MONTH_FORMAT,
  type MonthCoach,
  type MonthFile,
  type MonthLimitsSet,
  type MonthPlan,
  type MonthRoom,
  type MonthSlot,
} from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import type { CarriedCoach, EarlierClasses } from "./carried.ts";
import type { MonthState } from "./month-reader.ts";
import { monthClasses } from "./read.ts";
import type { Revision } from "./revisions.ts";

/** What a month takes from its studio. Instants in ms since the epoch. */
export interface MonthStudio {
  readonly uid: string;
  readonly name: string;
  /** IANA. */
  readonly zone: string;
  readonly rooms: ById<MonthRoom>;
  /** Those who may be given classes, and others whom a month names. */
  readonly coaches: ById<CarriedCoach>;
  /** Those that classes use or can be given, as the reader may know them. */
  readonly plans: ById<MonthPlan>;
  /** When what a feed shows of a plan, a room or a coach was changed last; left out: never. */
  readonly changedAt?: number;
  readonly limits?: MonthLimitsSet;
  readonly standards?: MonthFile["standards"];
  readonly weights?: Partial<FillWeights>;
  /** 'YYYY-MM-DD' in the studio's zone; days before it are over. */
  readonly asOf?: string;
  /** Classes of the 28 days before the month, from the months before. */
  readonly earlier?: EarlierClasses;
}

/** What stands for a room, a coach or a plan that nobody knows. */
const GONE = { room: "a room that no longer exists", coach: "a former member", equipment: "unknown" } as const;

const instant = (at: number): string => `${new Date(at).toISOString().slice(0, 19)}Z`;

/** `was`: the file before, whose unchanged parts stay the same objects. */
export function monthFileOf(state: MonthState, studio: MonthStudio, was?: MonthFile): MonthFile {
  const earlier = earlierOf(state, studio);
  const slots = [...earlier.slots, ...slotsOf(state)];
  const pattern = state.pattern;
  const used = { slots: [...slots, ...pattern], fill: state.fill };
  const now: MonthFile = {
    format: MONTH_FORMAT,
    title: state.title,
    studio: { uid: studio.uid, name: studio.name },
    zone: studio.zone,
    changedAt: instant(Math.max(state.revisions.month, studio.changedAt ?? 0)),
    dates: { ...state.dates, ...(earlier.known === undefined ? {} : { known: earlier.known }) },
    ...(studio.asOf === undefined ? {} : { asOf: studio.asOf }),
    ...part(state, "holidays", state.holidays),
    rooms: withUsed({ ...state.carried.rooms, ...studio.rooms }, roomIds(used.slots), goneRoom),
    coaches: coachesOf(state, studio, used.slots),
    regulars: state.regulars,
    ...part(state, "themes", state.themes),
    plans: withUsed({ ...state.carried.plans, ...studio.plans }, planIds(used.slots, state.fill), gonePlan),
    ...(pattern.length > 0 || state.given.includes("pattern") ? { pattern } : {}),
    slots,
    ...(studio.limits ? { limits: studio.limits } : {}),
    ...(studio.standards ? { standards: studio.standards } : {}),
    ...(studio.weights ? { weights: studio.weights } : {}),
    ...fillOf(state),
  };
  return keepSame(was, now);
}

const part = <K extends "holidays" | "themes">(state: MonthState, key: K, value: MonthState[K]) =>
  Object.keys(value).length > 0 || state.given.includes(key) ? { [key]: value } : {};

/** What calendars need to know of a class beside a month's file, by id: also of one that is not in the month any more. */
export function toldNumbers({ revisions }: MonthState): Record<string, ToldNumber> {
  return Object.fromEntries(
    Object.entries(revisions.slots).map(([id, { n, at, near }]) => [
      id,
      { sequence: n, changedAt: instant(at), ...(near === undefined ? {} : { near }) },
    ]),
  );
}

/** The slots of the document with what the server noted of them, and the pattern's own that something was noted of. */
function slotsOf(state: MonthState): MonthSlot[] {
  const { revisions } = state;
  const inDocument = new Set(state.slots.map(({ id }) => id));
  return monthClasses(state)
    .filter(({ id }) => inDocument.has(id) || (own(revisions.slots, id)?.at ?? 0) > 0)
    .map((slot) => withRevision(slot, own(revisions.slots, slot.id), stampOfTheme(slot, state)));
}

const stampOfTheme = ({ theme }: MonthSlot, { revisions }: MonthState): number =>
  typeof theme === "string" ? (own(revisions.themes, theme) ?? 0) : 0;

const revisedKept = perValue((_slot: MonthSlot) => new Kept<MonthSlot>());

function withRevision(slot: MonthSlot, revision: Revision | undefined, theme: number): MonthSlot {
  return revision ? revisedKept(slot).get([revision, theme], () => revisedSlot(slot, revision, theme)) : slot;
}

function revisedSlot(slot: MonthSlot, revision: Revision, theme: number): MonthSlot {
  const { n, at, formerCoaches, formerRooms, said } = revision;
  return {
    ...slot,
    ...(at > 0 ? { changedAt: instant(Math.max(at, theme)) } : {}),
    ...(n > 0 || said?.includes("sequence") ? { sequence: n } : {}),
    ...(formerCoaches && (formerCoaches.length > 0 || said?.includes("formerCoaches")) ? { formerCoaches } : {}),
    ...(formerRooms && (formerRooms.length > 0 || said?.includes("formerRooms")) ? { formerRooms } : {}),
  };
}

/**
 * The studio's own classes of the days before, or else those that came with a file. Only what counts there is kept: groups of
 * regulars that this month has, too; no theme.
 */
function earlierOf(state: MonthState, studio: MonthStudio): { known?: string; slots: readonly MonthSlot[] } {
  const own = studio.earlier?.slots.length ? studio.earlier : undefined;
  const { known, slots } = own ?? state.carried.earlier ?? studio.earlier ?? { slots: [] };
  if (known === undefined || known >= state.dates.from) return { slots: [] };
  const fit = slots.filter(({ date }) => date >= known && date < state.dates.from);
  return { known, slots: fit.map((slot) => withKnownRegulars(slot, state)) };
}

function withKnownRegulars(slot: MonthSlot, { regulars, themes }: MonthState): MonthSlot {
  const known = slot.regulars?.filter((id) => own(regulars, id) !== undefined);
  const lost = typeof slot.theme === "string" && own(themes, slot.theme) === undefined;
  if (known?.length === slot.regulars?.length && !lost) return slot;
  return { ...slot, ...(known ? { regulars: known } : {}), ...(lost ? { theme: null } : {}) };
}

type Refers = Pick<MonthSlot, "room" | "coach" | "plan" | "formerCoaches" | "formerRooms">;

const ids = (list: readonly (string | null | undefined)[]): string[] => [
  ...new Set(list.filter((id): id is string => typeof id === "string")),
];
const roomIds = (slots: readonly Refers[]) =>
  ids(slots.flatMap(({ room, formerRooms }) => [room, ...(formerRooms ?? [])]));
const coachIds = (slots: readonly Refers[]) =>
  ids(slots.flatMap(({ coach, formerCoaches }) => [coach, ...(formerCoaches ?? [])]));
const planIds = (slots: readonly Refers[], fill: FillWanted | undefined) =>
  ids([...slots.map(({ plan }) => plan), ...(fill?.plans ?? []), ...(fill?.wishes ?? []).map(({ plan }) => plan)]);

const goneRoom: MonthRoom = { name: GONE.room, machines: 1, equipment: GONE.equipment };
const goneCoach: MonthCoach = { name: GONE.coach, roles: [] };
const gonePlan: MonthPlan = { title: "", known: false };

function withUsed<T>(known: ById<T>, used: readonly string[], gone: T): ById<T> {
  const missing = used.filter((id) => own(known, id) === undefined);
  return missing.length === 0 ? known : { ...known, ...Object.fromEntries(missing.map((id) => [id, gone])) };
}

function coachesOf(state: MonthState, studio: MonthStudio, slots: readonly Refers[]): ById<MonthCoach> {
  const timed = Object.keys(state.coachTimes);
  const all = withUsed<MonthCoach>(
    { ...state.carried.coaches, ...studio.coaches },
    [...new Set([...coachIds(slots), ...timed])],
    goneCoach,
  );
  return Object.fromEntries(
    Object.entries(all).map(([id, { name, roles }]) => [id, { name, roles, ...own(state.coachTimes, id) }]),
  );
}

/** Wishes and lists name only classes that are there. */
function fillOf(state: MonthState): Pick<MonthFile, "fill"> {
  const { fill } = state;
  if (!fill) return state.given.includes("fill") ? { fill: {} } : {};
  const there = new Set(monthClasses(state).map(({ id }) => id));
  return {
    fill: {
      ...fill,
      ...(fill.slots ? { slots: fill.slots.filter((id) => there.has(id)) } : {}),
      ...(fill.wishes ? { wishes: fill.wishes.filter(({ slot }) => there.has(slot)) } : {}),
    },
  };
}
