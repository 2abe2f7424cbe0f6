/** The studio policy about sign-off: a manager's to change, nobody else's. */
import { afterAll, expect, it } from "vitest";
import { readStudio } from "#db/repos/studio-repo.ts";
import { changePolicy } from "#server/studio/change-policy.ts";
import { openStudio } from "#tests/support/plan-studio.ts";

const studio = openStudio();
afterAll(() => studio.stop());

it("is changed by a manager and read at the next sign-off", () => {
  expect(changePolicy(studio.app, studio.people.petra, { soleAuthorMaySign: true }).ok).toBe(true);
  expect(readStudio(studio.db)?.soleAuthorMaySign).toBe(true);
});

it.each(["ines", "marta", "jonas", "sam"] as const)("is not %s's to change", (who) => {
  const refused = changePolicy(studio.app, studio.people[who], { soleAuthorMaySign: false });
  expect(refused.ok ? 200 : refused.error.status).toBe(403);
  expect(readStudio(studio.db)?.soleAuthorMaySign).toBe(true);
});
