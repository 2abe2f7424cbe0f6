/** The sums of a month looked back on: in all, by theme, coach, regulars and muscle group. Never in the order of their size. */
import { namesById } from "#db/repos/people-repo.ts";
import { type GroupSum, type GroupWork, groupSums, groupSumsByRegulars, oneLogAClass } from "#lib/look-back/groups.ts";
import {
  bestEnd,
  type ClassOutcome,
  NOTHING_TAUGHT,
  type TaughtSum,
  taughtSum,
  taughtSumsBy,
} from "#lib/look-back/sums.ts";
import type { ProgrammeClass } from "#server/class-log/led-classes.ts";
import type { Springline } from "#server/context/springline.ts";
import type { EditionsTaught } from "./editions-taught.ts";
import type { MonthLog } from "./month-log.ts";

interface NamedSum extends TaughtSum {
  /** "" for those that have none, "others" for all other coaches together. */
  readonly id: string;
  readonly name: string;
}

export interface LookBackSums {
  /** Classes that are over. */
  readonly all: TaughtSum;
  readonly toCome: number;
  /** Logs that count and are of no class of the programme. */
  readonly outside: number;
  readonly struck: number;
  /** Classes that began more than a minute late, and whole minutes in all; minutes over the plan likewise. */
  readonly late: { readonly classes: number; readonly minutes: number };
  readonly themes: readonly NamedSum[];
  readonly coaches: readonly NamedSum[];
  readonly regulars: readonly NamedSum[];
  /** Seconds x weight of each group of muscles, over the classes that have a log that counts. */
  readonly groups: readonly GroupSum[];
  /** The same for each group of regulars. */
  readonly groupsByRegulars: readonly {
    readonly id: string;
    readonly name: string;
    readonly groups: readonly GroupSum[];
  }[];
}

interface Given {
  readonly planned: readonly ProgrammeClass[];
  readonly logs: readonly MonthLog[];
  readonly editions: EditionsTaught;
  readonly lists: {
    readonly themes: Readonly<Record<string, { readonly name: string }>>;
    readonly regulars: Readonly<Record<string, { readonly name: string }>>;
  };
  /** Everybody but this coach is one sum; null shows each. */
  readonly only: string | null;
}

export function lookBackSums(app: Springline, given: Given): LookBackSums {
  const { planned, logs, lists, only } = given;
  const counted = logs.filter(({ struck }) => struck === null);
  const over = planned.filter(({ to }) => to <= app.now());
  const outcomes = over.map((one) => outcomeOf(one, counted, only));
  const names = namesById(app.db);
  const work = workOf(given, counted);
  return {
    all: outcomes.length > 0 ? taughtSum(outcomes) : NOTHING_TAUGHT,
    toCome: planned.length - over.length,
    outside: counted.filter((log) => log.planned === null).length,
    struck: logs.length - counted.length,
    late: lateSum(counted),
    themes: named(
      outcomes,
      ({ theme }) => [theme],
      (id) => lists.themes[id]?.name,
      "no theme",
    ),
    coaches: named(
      outcomes,
      ({ coach }) => [coach],
      (id) => (id === OTHERS ? "All others" : names.get(id)),
      "nobody named",
    ),
    regulars: named(
      outcomes,
      ({ regulars }) => regulars,
      (id) => lists.regulars[id]?.name,
      "no regulars",
    ),
    groups: groupSums(work),
    groupsByRegulars: groupsByRegulars(given, work),
  };
}

const OTHERS = "others";

function outcomeOf({ id, date, slot }: ProgrammeClass, logs: readonly MonthLog[], only: string | null): ClassOutcome {
  const own = logs.filter(({ planned }) => planned?.id === id && planned.date === date);
  const end = bestEnd(own.map((log) => log.end));
  const coach = own.find((log) => log.end === end)?.coachId ?? slot.coach ?? null;
  return {
    minutes: slot.minutes,
    end,
    theme: slot.theme ?? null,
    coach: only !== null && coach !== null && coach !== only ? OTHERS : coach,
    regulars: slot.regulars ?? [],
  };
}

/** By name: nobody is ranked. */
function named(
  outcomes: readonly ClassOutcome[],
  idsOf: (one: ClassOutcome) => readonly (string | null)[],
  nameOf: (id: string) => string | undefined,
  none: string,
): NamedSum[] {
  return [...taughtSumsBy(outcomes, idsOf)]
    .map(([id, sum]) => ({ id, name: nameIn(id, nameOf, none), ...sum }))
    .sort(byName);
}

const nameIn = (id: string, nameOf: (id: string) => string | undefined, none: string): string =>
  id === "" ? none : (nameOf(id) ?? "one that is gone");

/** Those that have none come last. */
const byName = (a: Pick<NamedSum, "id" | "name">, b: Pick<NamedSum, "id" | "name">): number =>
  Number(a.id === "") - Number(b.id === "") || a.name.localeCompare(b.name, "en");

const MINUTE_MS = 60_000;

function lateSum(logs: readonly MonthLog[]): LookBackSums["late"] {
  const minutes = logs
    .map(({ startedAt, planned }) => (planned ? Math.floor((startedAt - planned.from) / MINUTE_MS) : 0))
    .filter((late) => late >= 1);
  return { classes: minutes.length, minutes: minutes.reduce((sum, late) => sum + late, 0) };
}

/** Of each class that has a log that counts, and of each log of no class. */
function workOf({ editions }: Given, logs: readonly MonthLog[]): GroupWork[] {
  const keyOf = ({ planned }: MonthLog) => planned && `${planned.date} ${planned.id}`;
  return oneLogAClass(logs, keyOf).map(({ log, planned }) => ({
    planned: editions.plannedGroupsOf(log.edition),
    taught: editions.taughtGroupsOf(log),
    regulars: planned?.slot.regulars ?? [],
  }));
}

/** By name, those of no regulars last. */
function groupsByRegulars({ lists }: Given, work: readonly GroupWork[]): LookBackSums["groupsByRegulars"] {
  return [...groupSumsByRegulars(work)]
    .map(([id, groups]) => ({ id, name: nameIn(id, (one) => lists.regulars[one]?.name, "no regulars"), groups }))
    .sort(byName);
}
