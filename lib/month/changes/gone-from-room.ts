/** What a room had in the signed month and no longer has there: for whoever stands before its week on the wall. Pure. */
import { own } from "#lib/plan/lookup.ts";
import type { MonthFile, MonthSlot } from "../types.ts";
import { timeOf } from "./change-words.ts";
import type { ChangedSlot } from "./slot-changes.ts";

export interface GoneFromRoom {
  /** As it was signed. */
  readonly was: MonthSlot;
  /** "called off", "now Thu 12 Nov 19:00", "now in Loft". */
  readonly words: string;
}

/** In the order of `changes`. A class that only begins at another time of its day stands there and is none. */
export function goneFromRoom(
  changes: readonly ChangedSlot[],
  room: string,
  now: Pick<MonthFile, "rooms">,
): GoneFromRoom[] {
  return changes.flatMap((change): GoneFromRoom[] => {
    const { kind, was } = change;
    if (!was || was.out === true || was.room !== room) return [];
    const is = kind === "called-off" ? null : change.now;
    if (!is) return [{ was, words: "called off" }];
    const moved = is.date !== was.date || is.start !== was.start;
    if (is.room !== room)
      return [{ was, words: [`now ${inRoom(is, now)}`, ...(moved ? [timeOf(is)] : [])].join(", ") }];
    return is.date === was.date ? [] : [{ was, words: `now ${timeOf(is)}` }];
  });
}

function inRoom({ room }: MonthSlot, { rooms }: Pick<MonthFile, "rooms">): string {
  if (typeof room !== "string") return "without a room";
  return `in ${own(rooms, room)?.name ?? "a room that is gone"}`;
}
