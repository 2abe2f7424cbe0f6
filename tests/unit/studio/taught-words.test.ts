/** How sure a number is, in words; and a draft under which the room's seconds change. */
import { expect, test } from "vitest";
import { likelyRangeWords, sureWords } from "#app/studio/_timings/timing-words.ts";
import { editOf, hearing, keeping, timingsDraftOf } from "#app/studio/_timings/timings-draft.ts";

test("how sure: from how many changes, and whose word it mostly is", () => {
  expect(sureWords({ seenIn: 0, share: 0 })).toBe("no change timed: the usual");
  expect(sureWords({ seenIn: 1, share: 0.1 })).toBe("only 1 change: still mostly the usual");
  expect(sureWords({ seenIn: 2, share: 0.49 })).toBe("only 2 changes: still mostly the usual");
  expect(sureWords({ seenIn: 40, share: 0.86 })).toBe("40 changes; 86% from your classes");
});

test("within which it lies, two deviations either way, never below nothing", () => {
  expect(likelyRangeWords({ seconds: 3.4, give: 0.42 })).toBe("2.6 to 4.2 s");
  expect(likelyRangeWords({ seconds: 0.5, give: 0.6 })).toBe("0 to 1.7 s");
});

test("what was typed stays when the room's seconds change, what was not follows", () => {
  const edit = editOf({ base: 2.5, springOn: 4 });
  const typed = { ...edit, draft: { ...edit.draft, springOn: "5", springOff: "1" } };
  const after = hearing(typed, { base: 3, springOn: 4.2, springOff: 2.6, strapOn: 6 });
  expect(after.draft).toMatchObject({ base: "3", springOn: "5", springOff: "1", strapOn: "6", strapOff: "" });
});

test("emptied between keeping and the page's own news of it: it stays empty", () => {
  const edit = editOf(undefined);
  const kept = keeping({ ...edit, draft: { ...edit.draft, base: "40" } }, { base: 40 });
  const emptied = { ...kept, draft: timingsDraftOf(undefined) };
  expect(hearing(emptied, { base: 40 }).draft.base).toBe("");
});
