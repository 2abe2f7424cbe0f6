/** Which build of the program this is. */
import { readFileSync } from "node:fs";
import { join } from "node:path";

/** The id of the build of the pages in that folder; null without one. */
export function readBuildId(distDir: string): string | null {
  try {
    return readFileSync(join(distDir, "BUILD_ID"), "utf8").trim();
  } catch {
    return null;
  }
}
