/** On the page: which findings still wait, and where the next one is, once a lead has accepted some. */
import { expect, test } from "vitest";
import { nextFinding } from "#app/_plan/next-finding.ts";
import { acceptedNow, lateAccepted } from "#app/_session/accepted-now.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { acceptanceKey } from "#lib/acceptance/accepted.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";

const { findings } = checkPlan(FIRST_TRY);
const looks = findings.filter(({ level }) => level === "look");
const [first] = looks;
if (!first) throw new Error("the plan has something to look at again");
const accepted = [
  {
    ...{ id: "a", rule: first.rule, findingKey: acceptanceKey(first) ?? "", message: first.message },
    ...{ reason: "They know it well.", byName: "Ines", at: 1 },
  },
];

test("nothing counts as accepted until what judges it has come; then the page's findings are judged once", async () => {
  expect(acceptedNow({ findings, accepted }).waiting).toBe(findings);
  await lateAccepted.fetch();
  const now = acceptedNow({ findings, accepted });
  expect(now.of.get(first)).toBe(accepted[0]);
  expect(now.waiting).toHaveLength(findings.length - 1);
  expect(acceptedNow({ findings, accepted })).toBe(now);
  expect(acceptedNow({ findings, accepted: [] }).waiting).toBe(findings);
});

test("an accepted finding is passed over on the way to the next", async () => {
  await lateAccepted.fetch();
  const snap = { plan: FIRST_TRY, findings, accepted, selectedId: null } as unknown as SessionSnapshot;
  const came = new Set<string | undefined>();
  let last = null as (typeof findings)[number] | null;
  for (let press = 0; press < looks.length; press++) {
    last = nextFinding({ ...snap, selectedId: last?.items[0] ?? null }, ["look"], last) ?? null;
    came.add(last?.key);
  }
  expect(came).toEqual(new Set(looks.slice(1).map(({ key }) => key)));
});
