/** A page's studio is the server's newest, whatever the network does in between. */
import { expect, test } from "vitest";
import { StudioLink } from "#app/_session/studio-link.ts";
import type { PlanStudio } from "#server/studio-data/plan-studio.ts";

const studio = (mark: string): PlanStudio => ({
  mark,
  roomName: "Loft",
  moves: {},
  equipment: { name: "Loft machines", carriageTravelMm: 1000, springs: [] },
});

/** A server whose answers a test gives by hand, and a clock that stands still until it is told to go. */
function page(mark: string) {
  const open: { answer(studio: PlanStudio | "refused"): void; fail(): void }[] = [];
  const taken: string[] = [];
  const waits: { run: () => void; ms: number; cancelled: boolean }[] = [];
  const link = new StudioLink(mark, {
    ask: () =>
      new Promise((resolve, reject) => open.push({ answer: resolve, fail: () => reject(new Error("no network")) })),
    take: (s) => taken.push(s.mark),
    later(run, ms) {
      const wait = { run, ms, cancelled: false };
      waits.push(wait);
      return () => {
        wait.cancelled = true;
      };
    },
  });
  const settle = () => new Promise((resolve) => setImmediate(resolve));
  return { link, open, taken, waits, settle };
}

test("the mark it holds asks nothing, another is fetched once", async () => {
  const p = page("a");
  p.link.hear("a");
  expect(p.open).toHaveLength(0);
  p.link.hear("b");
  p.link.hear("b");
  expect(p.open).toHaveLength(1);
  p.open[0]?.answer(studio("b"));
  await p.settle();
  expect(p.taken).toEqual(["b"]);
  p.link.hear("b");
  expect(p.open).toHaveLength(1);
});

test("news heard while one is fetched is fetched after it; an answer that has it already is enough", async () => {
  const p = page("a");
  p.link.hear("b");
  p.link.hear("c");
  p.open[0]?.answer(studio("b"));
  await p.settle();
  expect(p.open).toHaveLength(2);
  p.open[1]?.answer(studio("c"));
  await p.settle();
  p.link.hear("d");
  p.link.hear("e");
  p.open[2]?.answer(studio("e"));
  await p.settle();
  expect(p.taken).toEqual(["b", "c", "e"]);
  expect(p.open).toHaveLength(3);
});

test("an answer newer than its news is taken and not asked for again", async () => {
  const p = page("a");
  p.link.hear("b");
  p.open[0]?.answer(studio("c"));
  await p.settle();
  expect(p.taken).toEqual(["c"]);
  expect(p.open).toHaveLength(1);
  p.link.hear("c");
  expect(p.open).toHaveLength(1);
});

test("no network: it waits longer each time, and tries at once when it hears again", async () => {
  const p = page("a");
  p.link.hear("b");
  for (const i of [0, 1]) {
    p.open[i]?.fail();
    await p.settle();
    if (i === 0) p.waits[0]?.run();
  }
  expect(p.waits.map((w) => w.ms)).toEqual([500, 1000]);
  p.link.hear("b");
  expect(p.waits[1]?.cancelled).toBe(true);
  p.open[2]?.answer(studio("b"));
  await p.settle();
  expect(p.taken).toEqual(["b"]);
});

test("a refusal and the end of the page stop it", async () => {
  const p = page("a");
  p.link.hear("b");
  p.open[0]?.answer("refused");
  await p.settle();
  expect([p.taken, p.waits.length]).toEqual([[], 0]);
  p.link.hear("b");
  p.link.end();
  p.open[1]?.answer(studio("b"));
  await p.settle();
  expect(p.taken).toEqual([]);
});
