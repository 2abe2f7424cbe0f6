/** A test that prints a warning or an error fails, unless it expects it and says so by replacing the method itself. */
import { afterEach, beforeEach, vi } from "vitest";

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
