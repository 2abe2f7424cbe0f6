/** A rule of the month as a manager types it: what is kept, what is left out, and what is refused in words. */
import { expect, test } from "vitest";
import { type MonthRuleDraft, monthRuleDraftOf, readMonthRuleDraft } from "#app/rules/month-rule-draft.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { MONTH_RULES } from "#lib/month/check/registry.ts";
import type { MonthSettings } from "#server/month-facts/month-settings.ts";

const SETTINGS: MonthSettings = {
  ...{ zone: "Europe/Lisbon", weekStart: 1, machines: {}, equipment: {}, weights: {} },
  limits: { gapMinutes: 20, heavyBy: { glutes: 400 } },
  standards: { "no-coach": { level: "must" } },
} as MonthSettings;

const typed = (ruleId: string, change: Partial<MonthRuleDraft>) =>
  readMonthRuleDraft(ruleId, { ...monthRuleDraftOf(ruleId, SETTINGS, STANDARD_FORMATS), ...change }, SETTINGS);

test("what is shown and kept as it is changes nothing, for every rule", () => {
  for (const { id } of MONTH_RULES) expect(typed(id, {}), id).toEqual({ settings: SETTINGS, problems: {} });
});

test("a limit, the same for one group, and a level are kept; other rules' stay", () => {
  const draft = monthRuleDraftOf("short-recovery", SETTINGS, STANDARD_FORMATS);
  const { settings } = typed("short-recovery", {
    level: "must",
    values: { ...draft.values, recoveryHours: "36" },
    byGroup: { ...draft.byGroup, recoveryBy: { ...draft.byGroup.recoveryBy, calves: "24" } },
  });
  expect(settings?.limits).toMatchObject({ gapMinutes: 20, recoveryHours: 36, recoveryBy: { calves: 24 } });
  expect(settings?.standards).toEqual({ "no-coach": { level: "must" }, "short-recovery": { level: "must" } });
});

test("the usual value and an emptied group are left out", () => {
  const draft = monthRuleDraftOf("coach-gap-short", SETTINGS, STANDARD_FORMATS);
  expect(typed("coach-gap-short", { values: { ...draft.values, gapMinutes: "15" } }).settings?.limits).toEqual({
    heavyBy: { glutes: 400 },
  });
  const { byGroup } = monthRuleDraftOf("heavy-twice-a-day", SETTINGS, STANDARD_FORMATS);
  const emptied = { ...byGroup, heavyBy: { ...byGroup.heavyBy, glutes: "" } };
  expect(typed("heavy-twice-a-day", { byGroup: emptied }).settings?.limits).toEqual({ gapMinutes: 20 });
});

test("what is no number is said at its field, and nothing is kept", () => {
  const { byGroup } = monthRuleDraftOf("heavy-twice-a-day", SETTINGS, STANDARD_FORMATS);
  const wrong = { ...byGroup, heavyBy: { ...byGroup.heavyBy, calves: "a lot" } };
  expect(typed("heavy-twice-a-day", { byGroup: wrong })).toEqual({
    settings: null,
    problems: { "heavyBy/calves": "Type a number from 0 on, or leave it empty." },
  });
});
