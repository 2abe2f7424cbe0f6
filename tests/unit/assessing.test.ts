/** Assessments that people wait for: one at a time, several of one plan as one, and a failed one holds nobody up. */
import { expect, test } from "vitest";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { Assessing } from "#server/check/assessing.ts";
import type { CheckRunner } from "#server/check/runner.ts";
import type { Assessment, PlanReading } from "#server/context/assessment.ts";

const reading = (title: string): PlanReading => ({ plan: { ...UPPER_BODY_AND_TRUNK, title }, unknownItems: 0 });
const found = ({ plan }: PlanReading): Assessment => ({
  ...{ plan, hash: plan.title, findings: [], mustFix: [], broken: [], notAFile: null },
});

/** Answers when told to. */
function held() {
  const asked: string[] = [];
  const open: (() => void)[] = [];
  const runner: Pick<CheckRunner, "assess"> = {
    assess: (one) => {
      asked.push(one.plan.title);
      return new Promise((resolve, reject) =>
        open.push(() => (one.plan.title === "deadly" ? reject(new Error("gone")) : resolve(found(one)))),
      );
    },
  };
  const failed: string[] = [];
  const assessing = new Assessing(runner, (planId) => failed.push(planId));
  const answer = async () => {
    open.shift()?.();
    await new Promise((resolve) => setImmediate(resolve));
  };
  return { asked, failed, assessing, answer };
}

test("what was read last is assessed once for all who ask of one plan, and no plan waits for it twice", async () => {
  const { asked, assessing, answer } = held();
  const first = assessing.add("a", reading("a1"));
  const second = assessing.add("a", reading("a2"));
  const third = assessing.add("a", reading("a3"));
  const other = assessing.add("b", reading("b1"));
  for (let n = 0; n < 3; n++) await answer();
  expect(asked).toEqual(["a1", "a3", "b1"]);
  const titles = await Promise.all([first, second, third, other].map(async (one) => (await one)?.plan.title));
  expect(titles).toEqual(["a1", "a3", "a3", "b1"]);
});

test("one that cannot be assessed is null, and the next comes", async () => {
  const { assessing, failed, answer } = held();
  const deadly = assessing.add("a", reading("deadly"));
  const next = assessing.add("b", reading("b1"));
  await answer();
  await answer();
  expect(await deadly).toBeNull();
  expect((await next)?.hash).toBe("b1");
  expect(failed).toEqual(["a"]);
});
