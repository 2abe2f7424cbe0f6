/** A month as it is signed off. */
import type { ById, MonthFile, MonthSlot } from "../types.ts";

/**
 * Without what is no part of what a lead signs and would change it by itself: which day it is, what the search for plans was given,
 * and the rooms, coaches and plans that no class of the month names.
 */
export function monthAsSigned({ asOf: _a, fill: _f, weights: _w, ...month }: MonthFile): MonthFile {
  const named = [...month.slots, ...(month.pattern ?? [])];
  const ids = (of: (slot: Partial<MonthSlot>) => readonly (string | null | undefined)[]) => new Set(named.flatMap(of));
  return {
    ...month,
    rooms: only(
      month.rooms,
      ids(({ room, formerRooms = [] }) => [room, ...formerRooms]),
    ),
    coaches: only(
      month.coaches,
      ids(({ coach, formerCoaches = [] }) => [coach, ...formerCoaches]),
    ),
    plans: only(
      month.plans,
      ids(({ plan }) => [plan]),
    ),
  };
}

const only = <T>(map: ById<T>, ids: ReadonlySet<string | null | undefined>): ById<T> =>
  Object.fromEntries(Object.entries(map).filter(([id]) => ids.has(id)));
