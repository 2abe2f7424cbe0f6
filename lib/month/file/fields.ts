/** Kinds of value in a month file. */
import * as z from "zod/mini";
import { dayNumber, isTime } from "#lib/calendar/days.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";

export const idField = z.string().check(z.regex(ID_PATTERN));

/** The id of an occurrence is its line's id, a hyphen and eight digits. */
const LINE_ID = /^[a-z0-9][a-z0-9-]{0,54}$/;
export const lineIdField = z
  .string()
  .check(z.refine((id) => LINE_ID.test(id), "should be an id of 1 to 55 small letters, digits and hyphens"));

const isMonthDate = (date: string): boolean => /^20\d\d-/.test(date) && !Number.isNaN(dayNumber(date));
export const dateField = z
  .string()
  .check(z.refine(isMonthDate, "should be a real day from 2000-01-01 to 2099-12-31, written YYYY-MM-DD"));

export const timeField = z.string().check(z.refine(isTime, "should be a time from 00:00 to 23:59, written HH:MM"));
export const endTimeField = z
  .string()
  .check(z.refine((time) => time === "24:00" || isTime(time), "should be a time from 00:00 to 24:00, written HH:MM"));

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;
function isInstant(text: string): boolean {
  const at = INSTANT.test(text) ? Date.parse(text) : Number.NaN;
  // "24:00:00" and 31 February are moved on by the platform, so that they do not come back as they were.
  return !Number.isNaN(at) && new Date(at).toISOString() === text.replace("Z", ".000Z");
}
export const instantField = z.string().check(z.refine(isInstant, "should be an instant, written YYYY-MM-DDTHH:MM:SSZ"));

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
export const uuidField = z.string().check(z.refine((uid) => UUID.test(uid), "should be a UUID"));

/** A list in which nothing stands twice. */
export const onceEach = <T extends z.core.SomeType>(of: T) =>
  z.array(of).check(z.refine((list) => new Set(list.map(keyOf)).size === list.length, "should name nothing twice"));

/** The same for equal members, whatever the order of their keys. */
function keyOf(member: unknown): string {
  if (typeof member !== "object" || member === null || Array.isArray(member)) return JSON.stringify(member);
  return JSON.stringify(Object.entries(member).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** A check of an object with `from` and `to`. */
export const upwards = <T extends { readonly from?: string | undefined; readonly to?: string | undefined }>() =>
  z.refine<T>(({ from, to }) => from === undefined || to === undefined || from <= to, {
    message: "should not be before `from`",
    path: ["to"],
  });
