/** The files that a plan's page asks for beside its own script, as the build found them (`server/build/parts-beside.mjs`). */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as z from "zod";
import type { Env } from "#server/base/env.ts";

const list = z.array(z.string());
const known = new Map<string, readonly string[]>();

/** Their addresses; none before a build, as while developing. */
export function partsBeside({ distDir }: Pick<Env, "distDir">): readonly string[] {
  const found = known.get(distDir) ?? read(join(distDir, "beside.json"));
  known.set(distDir, found);
  return found;
}

function read(file: string): readonly string[] {
  try {
    return list.parse(JSON.parse(readFileSync(file, "utf8"))).map((path) => `/_next/${path}`);
  } catch {
    return []; // the page asks for them itself, only later
  }
}
