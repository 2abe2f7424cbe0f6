/** What is said before a plan is shared is what the rights then are. */
import { expect, test } from "vitest";
import { teamWords } from "#app/desk/act-words.ts";
import { canPlan, type Person } from "#lib/policy/can.ts";

const plan = (team: boolean) => ({ ownerId: "ann", sharedWith: [], team });
const person = (role: Person["roles"][number]): Person => ({ kind: "person", id: "ben", roles: [role] });
const may = (role: Person["roles"][number], team: boolean) => [
  canPlan(person(role), "plan.read", plan(team)),
  canPlan(person(role), "plan.write", plan(team)),
];

test("shared: every coach and lead reads and writes, a trainee does not", () => {
  expect(teamWords(false).ask).toContain("Every coach and lead of the studio will see this plan and may write in it");
  expect([may("coach", true), may("lead", true), may("trainee", true)]).toEqual([
    [true, true],
    [true, true],
    [false, false],
  ]);
});

test("no longer shared: coaches do not see it, leads still read it", () => {
  expect(teamWords(true).ask).toContain("Coaches will no longer see this plan");
  expect(teamWords(true).ask).toContain("Leads still read it");
  expect([may("coach", false), may("lead", false)]).toEqual([
    [false, false],
    [true, false],
  ]);
});
