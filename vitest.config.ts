import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    setupFiles: ["tests/setup.ts"],
    // Most of them run beside browsers, which come first.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    retry: 0,
    pool: "forks",
    // Both cores of a small machine: the default leaves one of them idle.
    maxWorkers: 2,
    // Nothing here keeps state in a module: what is loaded once serves every file of a worker, in half the time.
    isolate: false,
    alias: [
      {
        find: /^(#server\/worker-threads|\.)\/thread-file\.ts$/,
        replacement: `${import.meta.dirname}/tests/support/bundled-threads.ts`,
      },
    ],
  },
});
