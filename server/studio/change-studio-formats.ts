/** A manager changes the studio's clock: its zone, the first day of the week, and how dates and units are written for who has not chosen. */
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { writeSetting } from "#db/repos/setting-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { listWords } from "#lib/plan/format.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { changedMeanwhile, overSeen } from "#server/base/seen-values.ts";
import type { Springline } from "#server/context/springline.ts";
import { formatFields, storedStudioFormats } from "#server/formats/formats.ts";
import { monthSettings, timeZoneSchema, withoutMarks } from "#server/month-facts/month-settings.ts";
import { announceToMonths } from "#server/programme/announce-to-months.ts";

const studioFormatsSchema = z.strictObject({ ...formatFields, zone: timeZoneSchema });
export type StudioFormats = z.infer<typeof studioFormatsSchema>;

export const studioFormatsChangeSchema = z.strictObject({
  /** Only what is given changes. */
  formats: studioFormatsSchema.partial(),
  /** The same fields as they were shown, so that another manager's change is not overwritten unseen. */
  seen: studioFormatsSchema.partial(),
});

type App = Pick<Springline, "db" | "documents" | "now">;

function readStudioFormats(app: Pick<App, "db" | "now">): StudioFormats {
  const { zone, weekStart } = monthSettings(app);
  return { ...storedStudioFormats(app), zone, weekStart };
}

/** Errors: 401, 403. */
export function showStudioFormats(app: Pick<App, "db" | "now">, actor: Actor): Result<StudioFormats> {
  if (actor === null) return NOT_SIGNED_IN;
  return can(actor, "standards.manage") ? ok(readStudioFormats(app)) : NO_RIGHT;
}

/** Months that somebody has open follow at once, pages that are open when they are next loaded. Errors: 401, 403, 409 changed-meanwhile. */
export function changeStudioFormats(
  app: App,
  actor: Actor,
  { formats, seen }: z.infer<typeof studioFormatsChangeSchema>,
): Result<StudioFormats> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person" || !can(actor, "standards.manage")) return NO_RIGHT;
  const changed = inTransaction(app.db, (): Result<StudioFormats> => {
    const now = readStudioFormats(app);
    const merged = overSeen(now, seen, formats);
    if (!merged.ok) return changedMeanwhile(listWords(merged.clash.map((key) => FIELD_NAMES[key])));
    store(app, actor.id, now, merged.value);
    return ok(merged.value);
  });
  if (changed.ok) announceToMonths(app);
  return changed;
}

const FIELD_NAMES: Readonly<Record<keyof StudioFormats, string>> = {
  dates: "the language of dates",
  clock: "the clock",
  weekStart: "the first day of the week",
  force: "the unit of forces",
  length: "the unit of lengths",
  zone: "the time zone",
};

function store(app: App, actorId: string, was: StudioFormats, is: StudioFormats): void {
  const keys = (Object.keys(FIELD_NAMES) as (keyof StudioFormats)[]).filter((key) => was[key] !== is[key]); // its own keys
  if (keys.length === 0) return;
  const at = app.now();
  const { zone, weekStart, ...stored } = is;
  const months = monthSettings(app);
  if (zone !== months.zone || weekStart !== months.weekStart) {
    const data = { ...withoutMarks(months), zone, weekStart, uid: months.uid };
    writeSetting(app.db, "month", { data, updatedAt: at });
  }
  writeSetting(app.db, "formats", { data: stored, updatedAt: at });
  const part = (of: StudioFormats) => Object.fromEntries(keys.map((key) => [key, of[key]]));
  const body = { formats: part(is), before: part(was) };
  addToRecord(app.db, { at, actorId, subject: "studio", kind: "studio-formats", body });
}
