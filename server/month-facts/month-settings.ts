/** What a month says of the studio: its uid and zone, machines and equipment of its rooms, limits and standards of the month's rules. */
import { randomUUID } from "node:crypto";
import * as z from "zod";
import { listStudioRooms, type StudioRoom } from "#db/repos/room-repo.ts";
import { readSetting, writeSetting } from "#db/repos/setting-repo.ts";
import { deviceZone, isTimeZone, wallTimeAt } from "#lib/calendar/zone.ts";
import { keepSame } from "#lib/memo/keep-same.ts";
import { monthLimitsSchema } from "#lib/month/limits.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

const id = z.string().regex(ID_PATTERN, "An id has small letters, digits and hyphens.");
const weight = z.number().int().min(0).max(10_000).optional();
export const timeZoneSchema = z
  .string()
  .max(64, "Choose a time zone by its name, such as Europe/Lisbon.")
  .refine(isTimeZone, "Choose a time zone by its name, such as Europe/Lisbon.");
export const monthSettingsSchema = z.strictObject({
  zone: timeZoneSchema,
  /** On which day a week begins as it is shown and copied: 1 Monday, 7 Sunday. A person may choose another. */
  weekStart: z.union([z.literal(1), z.literal(7)]),
  /** By room id; a room that is not named has `USUAL_MACHINES`. */
  machines: z.record(z.string(), z.number().int().min(1).max(200)),
  /** By room id; a room that is not named has its equipment's name as an id. */
  equipment: z.record(z.string(), id),
  limits: monthLimitsSchema,
  standards: z.record(z.string(), z.strictObject({ level: z.enum(["must", "look", "info", "off"]) })),
  weights: z.strictObject({ must: weight, look: weight, info: weight, likeness: weight, wish: weight }),
});
export type MonthSettings = z.infer<typeof monthSettingsSchema>;

/** Common practice, no source: a small studio. Shown as not yet said. */
const USUAL_MACHINES = 10;

export interface KeptMonthSettings extends MonthSettings {
  /** Made once; every calendar's and event's own id is made from it. */
  readonly uid: string;
  /** ms since the epoch. */
  readonly updatedAt: number;
}

type App = Pick<Springline, "db" | "now">;

const kept = new WeakMap<object, KeptMonthSettings>();

/** The uid and the zone are stored when they are first asked for: neither may change by itself. The same object until it changes. */
export function monthSettings(app: App): KeptMonthSettings {
  const stored = readSetting(app.db, "month");
  const now = stored
    ? ({ ...(stored.data as KeptMonthSettings), updatedAt: stored.updatedAt } as KeptMonthSettings)
    : first(app);
  const same = keepSame(kept.get(app.db), now);
  kept.set(app.db, same);
  return same;
}

function first(app: App): KeptMonthSettings {
  const zone = deviceZone();
  const made = {
    uid: randomUUID(),
    ...{ zone, weekStart: 1 as const },
    ...{ machines: {}, equipment: {}, limits: {}, standards: {}, weights: {} },
  };
  writeSetting(app.db, "month", { data: made, updatedAt: app.now() });
  return { ...made, updatedAt: app.now() };
}

/** For everybody who reads the programme. Errors: 401, 403. */
export function readMonthSettings(app: App, actor: Actor): Result<MonthSettings> {
  if (actor === null) return NOT_SIGNED_IN;
  return can(actor, "programme.read") ? ok(withoutMarks(monthSettings(app))) : NO_RIGHT;
}

/** As a manager changes them. */
export const withoutMarks = ({ uid: _, updatedAt: _u, ...settings }: KeptMonthSettings): MonthSettings => settings;

/** The rooms as a month has them. */
export function monthRooms(app: App): MonthFile["rooms"] {
  const settings = monthSettings(app);
  return Object.fromEntries(
    listStudioRooms(app.db).map((room) => [
      room.id,
      {
        name: room.name,
        machines: settings.machines[room.id] ?? USUAL_MACHINES,
        equipment: equipmentIdOf(room, settings),
      },
    ]),
  );
}

export const equipmentIdOf = (
  room: Pick<StudioRoom, "id" | "equipment">,
  { equipment }: Pick<MonthSettings, "equipment">,
) => equipment[room.id] ?? equipmentSlug(room.equipment.name);

/** The name of the machines as an id: rooms whose machines have one name share it. */
export function equipmentSlug(name: string): string {
  const slug = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 64)
    .replace(/-+$/, "");
  return slug === "" ? "machines" : slug;
}

/** The zone of the studio's classes: as stored, else the server's own. Writes nothing. */
export function studioZone({ db }: Pick<Springline, "db">): string {
  const zone = (readSetting(db, "month")?.data as MonthSettings | undefined)?.zone;
  return zone ?? deviceZone();
}

/** The first day of the studio's weeks, likewise. */
export const studioWeekStart = ({ db }: Pick<Springline, "db">): MonthSettings["weekStart"] =>
  (readSetting(db, "month")?.data as MonthSettings | undefined)?.weekStart ?? 1;

/** `2026-05-04T18:00` on the studio's wall clock at `at` (ms since the epoch). */
export const studioClock = (app: Pick<Springline, "db">, at: number): string => wallClockText(at, studioZone(app));

/** The same in a zone that is known. */
export const wallClockText = (at: number, zone: string): string =>
  new Date(wallTimeAt(at, zone)).toISOString().slice(0, 16);

/** 'YYYY-MM-DD' in the studio. */
export const studioDay = (app: Pick<Springline, "db" | "now">): string => studioClock(app, app.now()).slice(0, 10);
