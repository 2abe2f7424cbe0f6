/** A studio that knows no room, no coach and no plan, for months whose classes name none. */
import type { MonthStudio } from "#lib/programme/month-file.ts";

export const EMPTY_STUDIO: MonthStudio = {
  uid: "6f1d3c52-8f0a-4d8b-9a57-2b1f5f0f7a11",
  name: "Tidewater Strength",
  zone: "UTC",
  rooms: {},
  coaches: {},
  plans: {},
};
