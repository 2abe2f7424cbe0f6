/** The parts of a month that rules look at. A part depends on nothing but what it holds, so that it is asked again alone. */
import type { MonthWeek } from "../instants.ts";
import type { CoachSums, MonthClass, RegularsSums, ThemeSums } from "../sums-types.ts";
import type { MonthCoach, MonthRoom, MonthTheme, Regulars } from "../types.ts";

/** One slot that is on. */
export interface SlotPart {
  readonly one: MonthClass;
  readonly room: MonthRoom | undefined;
  readonly coach: MonthCoach | undefined;
  readonly theme: MonthTheme | undefined;
  readonly regulars: readonly Regulars[];
  /** Its plan may not be read, or is gone. */
  readonly planUnknown: boolean;
  /** The name of the holiday on its date. */
  readonly holiday: string | undefined;
}

interface Classes {
  readonly id: string;
  /** Of known..to, by start, then id. */
  readonly classes: readonly MonthClass[];
}
export interface RoomPart extends Classes {
  readonly room: MonthRoom;
}
export interface CoachPart extends Classes {
  readonly coach: MonthCoach;
  readonly sums: CoachSums;
}
export interface RegularsPart extends Classes {
  readonly regulars: Regulars;
  readonly weeks: readonly MonthWeek[];
  readonly sums: RegularsSums;
}
/** Its classes are those of from..to. */
export interface ThemePart extends Classes {
  readonly theme: MonthTheme;
  readonly sums: ThemeSums;
}

export interface MonthParts {
  readonly slot: SlotPart;
  readonly room: RoomPart;
  readonly coach: CoachPart;
  readonly regulars: RegularsPart;
  readonly theme: ThemePart;
}
export type PartKind = keyof MonthParts;
