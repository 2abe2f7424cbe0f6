/** What the month's page says by itself: days, counts, plans, and what its parts hold. */

import { describe, expect, it } from "vitest";
import { MONTH_KEYS } from "#app/_month/month-commands.ts";
import { slotPlanWords } from "#app/_month/month-words.ts";
import { replaceWords } from "#app/_month/replace-words.ts";
import { dayWords, monthTitle } from "#lib/formats/dates.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import { monthCounts, openCounts, promiseWords } from "#lib/tide/month-counts.ts";
import { feedMonth, feedSlot } from "../../support/feed-month.ts";
import { marchMonth } from "../../support/tide-month.ts";

describe("words", () => {
  // 3 November 2026 is a Tuesday: ISO 8601 week 45 of 2026 begins on Monday 2 November.
  it("names days and months", () => {
    expect(dayWords("2026-11-03", STANDARD_FORMATS)).toBe("Tuesday 3 November");
    expect(monthTitle("2027-01", STANDARD_FORMATS)).toBe("January 2027");
  });
  it("counts what is on and what is still to do", () => {
    const month = marchMonth();
    const { sums, findings } = new MonthAnalyst().look(month);
    const counts = monthCounts(month, sums, findings);
    expect(counts).toMatchObject({ classes: 48, must: 2, empty: 3 });
    expect(openCounts(counts)).toMatch(/^2 must fix before it can be signed, \d+ look again\.$/);
    expect(openCounts({ ...counts, must: 0, look: 0 })).toBe("Nothing to fix.");
    expect(promiseWords(sums)).toBe("Themes promised: 1 of 1 theme there");
  });
  it("says how many classes a file brings in place of how many, without those called off", () => {
    const slots = [
      feedSlot(),
      feedSlot({ id: "two" }),
      feedSlot({ id: "off", out: true }),
      feedSlot({ id: "before", date: "2026-02-27" }),
    ];
    expect(replaceWords(feedMonth({ slots: [] }), feedMonth({ slots }))).toBe("0 classes in place of 2.");
    expect(replaceWords(feedMonth(), feedMonth({ slots: [] }))).toBe("1 class in place of 0.");
  });
  it("says of a signed plan that was written on that its edition still stands", () => {
    const plan = { id: "p", title: "", lengthSeconds: 1500, ownerName: "", edition: 2 };
    expect(slotPlanWords({ ...plan, state: "signed-off" })).toBe("edition 2");
    expect(slotPlanWords({ ...plan, state: "in-writing" })).toBe("edition 2, in writing again");
    expect(slotPlanWords({ ...plan, edition: 0, state: "handed-in" })).toBe("offered for reading");
  });
});

describe("the list of keys", () => {
  it("names the keys of the sheet, of a class on its way and of the panel, and one line for the nine plans", () => {
    expect(MONTH_KEYS.parts.map(({ title }) => title)).toEqual([
      "In the month",
      "While a class is being moved",
      "Beside the month",
      "Beside the month, also while typing",
    ]);
    const lines = MONTH_KEYS.parts[0]?.keys.map(([keys]) => keys);
    expect(lines).toContain("1, 2, 3, 4, 5, 6, 7, 8, 9");
    expect(lines).toContain("↑ ↓");
  });
});
