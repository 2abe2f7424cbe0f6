/** Who is checked next: whoever is waited for, then what a state hangs on, then the rest, each in turn and once. */

import { expect, test } from "vitest";
import { CheckQueue } from "#server/check/queue.ts";
import { type CheckRunner, PlaceEnded } from "#server/check/runner.ts";
import type { CheckAnswer } from "#server/context/checks.ts";

const answerFor = (planId: string): CheckAnswer => ({
  ...{
    planId,
    seq: 1,
    generation: "g",
    studioMark: "s",
    planMark: "p",
    findingsMark: "f",
    writtenOn: null,
    strip: null,
    lines: [],
  },
  counts: { must: 0, look: 0, info: 0 },
});

/** A place that answers only when told to. */
function held(places = 1) {
  const asked: string[] = [];
  const open: (() => void)[] = [];
  const runner: CheckRunner = {
    places,
    run: (_, { planId, withFindings }) => {
      asked.push(withFindings ? `${planId}!` : planId);
      return new Promise((resolve) => open.push(() => resolve(answerFor(planId))));
    },
    assess: async () => null,
    stop: async () => undefined,
  };
  const answerAll = async () => {
    for (let n = 0; n < 20; n++) {
      open.shift()?.();
      await Promise.resolve();
      await new Promise((resolve) => setImmediate(resolve));
    }
  };
  return { asked, runner, answerAll };
}

test("people first, then states, then what was written; within each in turn", async () => {
  const { asked, runner, answerAll } = held();
  const queue = new CheckQueue({ runner, answered: () => undefined, failed: () => undefined });
  const all = [
    queue.add("at-work", "written"),
    queue.add("written-1", "written"),
    queue.add("written-2", "written"),
    queue.add("state", "soon"),
    queue.add("person", "waited-for", true),
    queue.add("written-2", "waited-for"),
    queue.add("written-1", "written", true),
  ];
  await answerAll();
  await Promise.all(all);
  expect(asked).toEqual(["at-work", "written-2", "person!", "state", "written-1!"]);
  expect(queue.idle).toBe(true);
});

test("a plan that is asked for while it is being checked is checked again: it may have been written in since", async () => {
  const { asked, runner, answerAll } = held();
  const queue = new CheckQueue({ runner, answered: () => undefined, failed: () => undefined });
  const all = [queue.add("a", "written"), queue.add("a", "written"), queue.add("a", "soon")];
  await answerAll();
  expect((await Promise.all(all)).map((answer) => answer?.planId)).toEqual(["a", "a", "a"]);
  expect(asked).toEqual(["a", "a"]);
});

test("a plan is always given to the same place, and all places work", async () => {
  const placeOf = new Map<string, Set<number>>();
  const runner: CheckRunner = {
    places: 3,
    run: async (place, { planId }) => {
      placeOf.set(planId, (placeOf.get(planId) ?? new Set()).add(place));
      return answerFor(planId);
    },
    assess: async () => null,
    stop: async () => undefined,
  };
  const queue = new CheckQueue({ runner, answered: () => undefined, failed: () => undefined });
  for (let round = 0; round < 2; round++)
    await Promise.all(Array.from({ length: 40 }, (_, n) => queue.add(`plan-${n * 17}`, "written")));
  expect([...placeOf.values()].every((places) => places.size === 1)).toBe(true);
  expect(new Set([...placeOf.values()].flatMap((places) => [...places])).size).toBe(3);
});

test("a place that ends is asked once more; a plan that cannot be checked holds nobody up", async () => {
  const tries = new Map<string, number>();
  const failed: string[] = [];
  const runner: CheckRunner = {
    places: 1,
    run: async (_, { planId }) => {
      const nth = (tries.get(planId) ?? 0) + 1;
      tries.set(planId, nth);
      if (planId === "deadly" || (planId === "unlucky" && nth === 1)) throw new PlaceEnded("gone");
      if (planId === "damaged") throw new Error("cannot be read");
      return answerFor(planId);
    },
    assess: async () => null,
    stop: async () => undefined,
  };
  const queue = new CheckQueue({ runner, answered: () => undefined, failed: (planId) => failed.push(planId) });
  const answers = await Promise.all(["unlucky", "deadly", "damaged", "good"].map((id) => queue.add(id, "soon")));
  expect(answers.map((answer) => answer?.planId ?? null)).toEqual(["unlucky", null, null, "good"]);
  expect(failed).toEqual(["deadly", "damaged"]);
  expect(Object.fromEntries(tries)).toEqual({ unlucky: 2, deadly: 2, damaged: 1, good: 1 });
});
