/** The limits of a month: bounds, usual values and words, for the file's parser, the rules' pages and the arithmetic. */
import * as z from "zod/mini";
import { numberFrom } from "#lib/plan/number-fields.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { MONTH_LIMITS } from "./types.ts";

const MOST_SECONDS = 86_400;
const MOST_HOURS = 24 * 62;

const limit = (usual: number, to: number, says: string) => z._default(numberFrom(0, to), usual).check(z.describe(says));
const byGroup = (to: number, says: string) =>
  z._default(z.partialRecord(z.enum(GROUPS), numberFrom(0, to)), {}).check(z.describe(says));

/** A rule names those that it looks at. */
export const MONTH_LIMIT_FIELDS = {
  heavySeconds: limit(
    MONTH_LIMITS.heavySeconds,
    MOST_SECONDS,
    "A muscle group works hard on a day from this many seconds of work",
  ),
  heavyBy: byGroup(MOST_SECONDS, "The same for single muscle groups, in seconds"),
  recoveryHours: limit(MONTH_LIMITS.recoveryHours, MOST_HOURS, "Least hours between two days of hard work"),
  recoveryBy: byGroup(MOST_HOURS, "The same for single muscle groups, in hours"),
  likeMost: limit(MONTH_LIMITS.likeMost, 1, "Two neighbouring classes are too alike from this likeness, 0 to 1"),
  riseMost: limit(MONTH_LIMITS.riseMost, 100, "Most by which a week's work may rise, as a share of the week before"),
  varietyLeast: limit(MONTH_LIMITS.varietyLeast, 1000, "Fewest different moves in a week"),
  coachMinutesDay: limit(MONTH_LIMITS.coachMinutesDay, 1440, "Most minutes that one coach teaches on a day"),
  coachTalkSecondsDay: limit(
    MONTH_LIMITS.coachTalkSecondsDay,
    MOST_SECONDS,
    "Most seconds that one coach talks on a day",
  ),
  gapMinutes: limit(MONTH_LIMITS.gapMinutes, 1440, "Least minutes between two classes of one coach on a day"),
  restHours: limit(MONTH_LIMITS.restHours, MOST_HOURS, "Least hours of rest between two days of one coach"),
} as const;

export type MonthLimitName = keyof typeof MONTH_LIMIT_FIELDS;

/** More than any limit needs: a file may switch a rule off by its limit, where a page keeps to what makes sense. */
const ANY = numberFrom(0, 1e6);
const anyByGroup = z.partialRecord(z.enum(GROUPS), ANY);
const BY_GROUP: readonly string[] = ["heavyBy", "recoveryBy"] satisfies MonthLimitName[];

/** Limits as the file gives them: each may be left out, and nothing is put in. */
export const monthLimitsSchema = z.strictObject(
  Object.fromEntries(
    Object.keys(MONTH_LIMIT_FIELDS).map((name) => [name, z.optional(BY_GROUP.includes(name) ? anyByGroup : ANY)]),
  ),
);
