/**
 * In which formats somebody is shown what they read: their own choices over the studio's. The studio's zone and first day of
 * the week are those of its months (`server/month-facts`); the others are a setting of their own.
 */
import * as z from "zod";
import type { Db } from "#db/connection.ts";
import { readOwnFormats } from "#db/repos/format-choice-repo.ts";
import { readNoticeChoice } from "#db/repos/notice-choice-repo.ts";
import { readSetting } from "#db/repos/setting-repo.ts";
import { isTimeZone } from "#lib/calendar/zone.ts";
import { DATE_LANGUAGES } from "#lib/formats/date-languages.ts";
import {
  CLOCKS,
  FORCE_UNITS,
  type FormatChoices,
  type Formats,
  LENGTH_UNITS,
  STANDARD_FORMATS,
  WEEK_STARTS,
} from "#lib/formats/formats.ts";
import { chosenOver, formatsOf } from "#lib/formats/formats-of.ts";
import { studioWeekStart, studioZone } from "#server/month-facts/month-settings.ts";

interface App {
  readonly db: Db;
}

const listed = <T extends string | number>(values: readonly T[], say: string) => z.literal(values, say);

/** One schema for a studio's and a person's, each with the sentence that a wrong value is answered with. */
export const formatFields = {
  dates: listed(DATE_LANGUAGES, "Dates cannot be written in this language. Choose one of the list."),
  clock: listed(CLOCKS, "The clock has 24 hours or 12: give “24” or “12”."),
  weekStart: listed(WEEK_STARTS, "A week begins on Monday or on Sunday: give 1 or 7."),
  force: listed(FORCE_UNITS, "Forces are in newtons, kilograms or pounds: give “N”, “kgf” or “lbf”."),
  length: listed(LENGTH_UNITS, "Lengths are in centimetres or inches: give “cm” or “in”."),
};

/** What the studio's own setting holds: the first day of the week is the months'. */
export type StoredStudioFormats = Omit<FormatChoices, "weekStart">;

export function storedStudioFormats({ db }: App): StoredStudioFormats {
  const { dates, clock, force, length } = STANDARD_FORMATS;
  const stored = readSetting(db, "formats")?.data as Partial<StoredStudioFormats> | undefined; // written by change-studio-formats.ts only
  return { dates, clock, force, length, ...stored };
}

/** What the studio decides: shown to people who have not chosen for themselves. */
export const studioChoices = (app: App): FormatChoices => ({
  ...storedStudioFormats(app),
  weekStart: studioWeekStart(app),
});

/** For what belongs to no person: a room's devices, the health of the server. */
export const studioFormats = (app: App): Formats => formatsOf(studioChoices(app), studioZone(app));

/** For one person. Moments are told in the zone that they chose under Notices, else in the studio's. */
export const personFormats = (app: App, userId: string): Formats =>
  formatsOf(chosenOver(studioChoices(app), readOwnFormats(app.db, userId)), personZone(app, userId));

/** A zone that this machine's Node does not know any more counts as none. */
function personZone(app: App, userId: string): string {
  const own = readNoticeChoice(app.db, userId)?.timeZone;
  return own !== undefined && isTimeZone(own) ? own : studioZone(app);
}
