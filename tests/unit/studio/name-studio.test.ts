/** The studio's name and town: who changes them, what is refused, what stands in the record. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { listRecord } from "#db/repos/record-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { nameStudio, studioNameSchema } from "#server/studio/name-studio.ts";
import { must, openStudio, outcome, type PlanStudio } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

test("a manager changes them, once in the record with what they were", () => {
  const { petra, ines } = s.people;
  const { name, town } = readStudio(s.db) ?? { name: "", town: "" };
  must(nameStudio(s.app, petra, { name: "Slipway Strength", town: "Port Ellery" }));
  must(nameStudio(s.app, petra, { name: "Slipway Strength", town: "Port Ellery" }));
  expect(readStudio(s.db)).toMatchObject({ name: "Slipway Strength", town: "Port Ellery" });
  const named = listRecord(s.db, 0, 100).filter(({ kind }) => kind === "studio-named");
  expect(named.map(({ bodyJson }) => JSON.parse(bodyJson))).toEqual([
    { name: "Slipway Strength", town: "Port Ellery", before: { name, town } },
  ]);
  expect(outcome(nameStudio(s.app, ines, { name: "Hers", town: "" }))).toBe("no-right");
});

test("a studio has a name of one line, and a town or none", () => {
  expect(studioNameSchema.safeParse({ name: "  ", town: "" }).error?.issues[0]?.message).toBe(
    "Enter the studio's name.",
  );
  expect(studioNameSchema.safeParse({ name: "x".repeat(121), town: "" }).success).toBe(false);
  expect(studioNameSchema.parse({ name: " Slipway ", town: " " })).toEqual({ name: "Slipway", town: "" });
});
