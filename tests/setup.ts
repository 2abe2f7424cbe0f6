/**
 * A test that prints a warning or an error fails, unless it expects it and says so by replacing the method itself.
 *
 * Properties are tried with one seed, so that a red run tells of the change and of nothing else. The long run, and
 * `SPRINGLINE_SEED=random npx vitest run`, look for what that seed does not meet.
 */
import fc from "fast-check";
import { afterEach, beforeEach, vi } from "vitest";

const random = process.env.SPRINGLINE_SEED === "random" || process.env.SPRINGLINE_LONG === "1";
if (!random) fc.configureGlobal({ seed: Number(process.env.SPRINGLINE_SEED ?? 20261130) });

const seen: string[] = [];
beforeEach(() => {
  seen.length = 0;
  for (const level of ["error", "warn"] as const) {
    vi.spyOn(console, level).mockImplementation((...words: unknown[]) => {
      seen.push(`console.${level}: ${words.map(String).join(" ")}`);
    });
  }
});
afterEach(() => {
  vi.restoreAllMocks();
  if (seen.length > 0) throw new Error(`unexpected output:\n${seen.join("\n")}`);
});
