/** Parts of a page that come after it: fetched once, asked for again when the network failed, never in the way. */
import { expect, test } from "vitest";
import { fetchWhenIdle, loadLater } from "#lib/client/late.ts";

const idleQueue = () => {
  const waiting: (() => void)[] = [];
  return { whenIdle: (run: () => void) => void waiting.push(run), pass: () => waiting.shift()?.() };
};

test("a part asked for twice is fetched once", async () => {
  let fetched = 0;
  const part = loadLater(async () => ++fetched);
  expect(part.here).toBe(null);
  expect(await Promise.all([part.fetch(), part.fetch()])).toEqual([1, 1]);
  expect(part.here).toBe(1);
});

test("what could not be fetched is fetched when it is asked for again", async () => {
  let network = false;
  const part = loadLater(async () => {
    if (!network) throw new Error("no network");
    return "here";
  });
  await expect(part.fetch()).rejects.toThrow("no network");
  network = true;
  expect(await part.fetch()).toBe("here");
});

test("idle: one after the other, past what fails, and no further once the page is left", async () => {
  const fetched: string[] = [];
  const named = (name: string, fails = false) =>
    loadLater(async () => {
      fetched.push(name);
      if (fails) throw new Error("no network");
      return name;
    });
  const parts = [named("first"), named("second", true), named("third"), named("fourth")];
  const idle = idleQueue();
  const end = fetchWhenIdle(parts, idle.whenIdle);
  expect(fetched).toEqual([]);
  for (let i = 0; i < 3; i++) {
    idle.pass();
    await new Promise((done) => setImmediate(done));
  }
  expect(fetched).toEqual(["first", "second", "third"]);
  end();
  idle.pass();
  expect(fetched).toEqual(["first", "second", "third"]);
});
