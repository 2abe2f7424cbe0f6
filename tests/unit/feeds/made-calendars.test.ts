/** Calendars that were made are kept for those who read them, and not for every address there ever was. */
import { expect, test } from "vitest";
import { MadeCalendars } from "#server/feeds/made-calendars.ts";

test("the 200 that were read last are kept, and a calendar that is read again stays", () => {
  const made = new MadeCalendars();
  const [first, second] = [made.of("first"), made.of("second")];
  for (let n = 0; n < 198; n++) made.of(`feed-${n}`);
  expect(made.of("first")).toBe(first);
  made.of("one-more");
  expect(made.of("first")).toBe(first);
  expect(made.of("second")).not.toBe(second);
});
