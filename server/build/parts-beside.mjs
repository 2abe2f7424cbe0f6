/**
 * Which files a plan's page asks for beside its own script. Their names are known only to the built script, which asks late; a
 * page that names them itself (`server/http/parts-beside.ts`) has them by then.
 */
import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";

/** The part, by the name of what it exports: `app/_plan/plan-page.tsx`. */
const ASKED = /\.A\((\d+)\)\.then\(\w+=>\w+\.PlanInUse\)/;

/** @param pages Next's output. Writes `beside.json`: a list of paths below `/_next/`, empty where none was found. */
export async function namePartsBeside(pages) {
  const folder = join(pages, "static", "chunks");
  const names = (await readdir(folder)).filter((name) => name.endsWith(".js"));
  const chunks = await Promise.all(names.map((name) => readFile(join(folder, name), "utf8")));
  await writeFile(join(pages, "beside.json"), JSON.stringify(filesOf(chunks)));
}

/** @param {readonly string[]} chunks */
function filesOf(chunks) {
  const id = chunks.map((chunk) => ASKED.exec(chunk)?.[1]).find((found) => found !== undefined);
  const loads = new RegExp(`\\b${id},\\w+=>\\{\\w+\\.v\\(\\w+=>Promise\\.all\\((\\[[^\\]]*\\])`);
  const list = chunks.map((chunk) => loads.exec(chunk)?.[1]).find((found) => found !== undefined);
  return list === undefined ? [] : JSON.parse(list);
}
