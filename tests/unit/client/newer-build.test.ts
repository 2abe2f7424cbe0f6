/** A page notices once that the server runs another build than made it, and takes no silence for one. */
import { expect, test } from "vitest";
import { NewerBuild } from "#lib/client/newer-build.ts";

test("another build is noticed once, and stays noticed", () => {
  const newer = new NewerBuild(() => "a");
  let told = 0;
  const leave = newer.subscribe(() => told++);
  newer.heard("a");
  expect([newer.known, told]).toEqual([false, 0]);
  newer.heard("b");
  newer.heard("c");
  newer.heard("a");
  expect([newer.known, told]).toEqual([true, 1]);
  leave();
});

test("an answer that names no build, and a page of none, are no news", () => {
  const named = new NewerBuild(() => "a");
  named.heard(null);
  expect(named.known).toBe(false);
  const unnamed = new NewerBuild(() => null);
  unnamed.heard("b");
  expect(unnamed.known).toBe(false);
});
