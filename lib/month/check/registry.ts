/** Every rule of the month, sorted by id. */
import type { AnyMonthRule } from "../define/define-month-rule.ts";
import { coachAway } from "../rules/coach-away.ts";
import { coachClash } from "../rules/coach-clash.ts";
import { coachGapShort } from "../rules/coach-gap-short.ts";
import { coachLongDay } from "../rules/coach-long-day.ts";
import { coachRestShort } from "../rules/coach-rest-short.ts";
import { coachRole } from "../rules/coach-role.ts";
import { coachTalksLong } from "../rules/coach-talks-long.ts";
import { heavyTwiceADay } from "../rules/heavy-twice-a-day.ts";
import { littleVariety } from "../rules/little-variety.ts";
import { morePeopleThanMachines } from "../rules/more-people-than-machines.ts";
import { noCoach } from "../rules/no-coach.ts";
import { noPlan } from "../rules/no-plan.ts";
import { noRoom } from "../rules/no-room.ts";
import { onAHoliday } from "../rules/on-a-holiday.ts";
import { otherEquipment } from "../rules/other-equipment.ts";
import { planTooLong } from "../rules/plan-too-long.ts";
import { planUnknown } from "../rules/plan-unknown.ts";
import { roomClash } from "../rules/room-clash.ts";
import { shortRecovery } from "../rules/short-recovery.ts";
import { themeNotKept } from "../rules/theme-not-kept.ts";
import { themePromiseMissed } from "../rules/theme-promise-missed.ts";
import { timeSkipped } from "../rules/time-skipped.ts";
import { timeTwice } from "../rules/time-twice.ts";
import { tooAlike } from "../rules/too-alike.ts";
import { unsignedPlan } from "../rules/unsigned-plan.ts";
import { weekRisesMuch } from "../rules/week-rises-much.ts";

export const MONTH_RULES: readonly AnyMonthRule[] = [
  coachAway,
  coachClash,
  coachGapShort,
  coachLongDay,
  coachRestShort,
  coachRole,
  coachTalksLong,
  heavyTwiceADay,
  littleVariety,
  morePeopleThanMachines,
  noCoach,
  noPlan,
  noRoom,
  onAHoliday,
  otherEquipment,
  planTooLong,
  planUnknown,
  roomClash,
  shortRecovery,
  themeNotKept,
  themePromiseMissed,
  timeSkipped,
  timeTwice,
  tooAlike,
  unsignedPlan,
  weekRisesMuch,
];

/** Undefined for an id that no rule of the month has. */
export const monthRuleById = (id: string): AnyMonthRule | undefined => MONTH_RULES.find((rule) => rule.id === id);
