/** A month of two rooms and two coaches, for tests of its calendar. */
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";

export const FEED_STUDIO = { uid: "6f1d3c52-8f0a-4d8b-9a57-2b1f5f0f7a11", name: "Tidewater Strength" };

export const feedSlot = (changed: Partial<MonthSlot> = {}): MonthSlot => ({
  id: "early",
  date: "2026-03-28",
  start: "07:00",
  minutes: 45,
  room: "harbour",
  coach: "marta",
  ...changed,
});

export const feedMonth = (changed: Partial<MonthFile> = {}): MonthFile => ({
  format: "springline.month/1",
  title: "March",
  studio: FEED_STUDIO,
  zone: "Europe/Lisbon",
  changedAt: "2026-02-20T09:30:00Z",
  dates: { from: "2026-03-01", to: "2026-03-31" },
  rooms: {
    harbour: { name: "Harbour room", machines: 10, equipment: "long-rail" },
    loft: { name: "Loft", machines: 6, equipment: "long-rail" },
  },
  coaches: { marta: { name: "Marta", roles: ["coach"] }, jonas: { name: "Jonas", roles: ["coach"] } },
  regulars: {},
  plans: {},
  slots: [feedSlot()],
  ...changed,
});
