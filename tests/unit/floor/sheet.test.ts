/** The "End on time" sheet closes when a heads-up or a change begins and when it is left alone, in a real class. */
import { expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { floorView } from "#lib/floor/now.ts";
import { CLOSED_WORDS, SHEET_UNTOUCHED_MS, sheetCloses, sheetMoment } from "#lib/floor/sheet.ts";
import { samplePlan } from "../card/sample-plan.ts";

// Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing from 225.
const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 1,
  room: { id: "harbour", name: "Harbour room" },
  plan: { ...samplePlan(), headsUpSeconds: 10 },
  issuedAt: 0,
  expiresAt: 86_400_000,
});
const T0 = 1_000_000;
const log: FloorLog = [{ type: "start", at: T0 }];
const momentAt = (seconds: number) => sheetMoment(floorView(card, log, T0 + seconds * 1000));

/** When and why a sheet opened at `from` closes without a touch; checked every tenth of a second. */
function closing(from: number) {
  let was = momentAt(from);
  for (let tenths = 1; tenths < 1000; tenths++) {
    const is = momentAt(from + tenths / 10);
    const why = sheetCloses(was, is, tenths * 100);
    if (why) return { at: from + tenths / 10, why };
    was = is;
  }
  return null;
}

test("closes after twenty seconds without a touch", () => {
  expect(SHEET_UNTOUCHED_MS).toBe(20_000);
  expect(closing(31)).toEqual({ at: 51, why: "untouched" });
});

test("closes when the heads-up begins, even if just opened", () => {
  expect(closing(75)).toEqual({ at: 80, why: "change" });
});

test("opened during the heads-up it closes when the change or whatever comes next begins", () => {
  expect(closing(170)).toEqual({ at: 175, why: "change" });
  expect(closing(85)).toEqual({ at: 90, why: "change" });
  expect(closing(215)).toEqual({ at: 225, why: "change" });
});

test("opened during a change it stays when the work begins", () => {
  expect(closing(125)).toEqual({ at: 145, why: "untouched" });
});

test("says that nothing was changed", () => {
  for (const words of Object.values(CLOSED_WORDS)) expect(words).toMatch(/Nothing was changed\.$/);
});
