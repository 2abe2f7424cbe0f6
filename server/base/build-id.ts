/** Which build of the program this is. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Env } from "./env.ts";

/** The id of the build of the pages; "dev" without one. */
export function buildId(env: Pick<Env, "distDir">): string {
  try {
    return readFileSync(join(env.distDir, "BUILD_ID"), "utf8").trim();
  } catch {
    return "dev";
  }
}
