/** The files that an open plan takes, as the build found them (`server/build/plan-parts.mjs`). */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as z from "zod";
import type { Env } from "#server/base/env.ts";

const paths = z.array(z.string().transform((path) => `/_next/${path}`));
const listsSchema = z.object({ own: paths, beside: paths });
/** Addresses: what the page itself names, and what its script asks for late. */
type OpenPlanFiles = z.infer<typeof listsSchema>;

const known = new Map<string, OpenPlanFiles>();

/** None before a build, as while developing. */
export function openPlanFiles({ distDir }: Pick<Env, "distDir">): OpenPlanFiles {
  const found = known.get(distDir) ?? read(join(distDir, "plan-parts.json"));
  known.set(distDir, found);
  return found;
}

function read(file: string): OpenPlanFiles {
  try {
    return listsSchema.parse(JSON.parse(readFileSync(file, "utf8")));
  } catch {
    return { own: [], beside: [] }; // the pages ask for them themselves, only later
  }
}
