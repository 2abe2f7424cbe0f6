/** A month as it stands, as the file that a calendar is made from. The one place of this folder that knows where months come from. */
import { namesById } from "#db/repos/people-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { daysOfMonth } from "#lib/calendar/days.ts";
import { MONTH_FORMAT, type MonthFile, type MonthSlot } from "#lib/month/types.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { Springline } from "#server/context/springline.ts";
import { slotsOfMonth } from "#server/programme/month-slots.ts";

type App = Pick<Springline, "db" | "documents">;

/** IANA name of the studio's zone. */
export const studioZone = (_app: Pick<Springline, "db">): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Empty for a month that nobody has written in, or that cannot be read just now. */
export function liveMonth(app: App, month: string): MonthFile {
  const days = daysOfMonth(month);
  const slots = slotsOfMonth(app, month);
  const themes = [...new Set(slots.map(({ theme }) => theme).filter((theme) => theme !== ""))];
  return {
    format: MONTH_FORMAT,
    title: month,
    studio: { uid: "00000000-0000-4000-8000-000000000000", name: readStudio(app.db)?.name ?? "" },
    zone: studioZone(app),
    changedAt: "2026-01-01T00:00:00Z",
    dates: { from: days[0] ?? "", to: days.at(-1) ?? "" },
    rooms: Object.fromEntries(
      listStudioRooms(app.db).map(({ id, name }) => [id, { name, machines: 1, equipment: "machine" }]),
    ),
    coaches: Object.fromEntries([...namesById(app.db)].map(([id, name]) => [id, { name, roles: [] }])),
    regulars: {},
    themes: Object.fromEntries(themes.map((name, i) => [`theme-${i}`, { name }])),
    plans: {},
    slots: slots.map((slot) => toMonthSlot(slot, themes)),
  };
}

const toMonthSlot = (slot: Slot, themes: readonly string[]): MonthSlot => ({
  id: slot.id,
  date: slot.date,
  start: slot.time,
  minutes: slot.minutes,
  room: slot.roomId,
  coach: slot.coachId,
  theme: slot.theme === "" ? null : `theme-${themes.indexOf(slot.theme)}`,
});
