/**
 * Which files an open plan takes: its page's own, and those that its script asks for late, whose names only the built script
 * knows. A page that names them itself (`server/http/plan-parts.ts`) has them by then.
 */
import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { runInNewContext } from "node:vm";

/** The part, by the name of what it exports: `app/_plan/plan-page.tsx`. */
const ASKED = /\.A\((\d+)\)\.then\(\w+=>\w+\.PlanInUse\)/;

/** Next's list of what the browser loads for the page, a script that sets a global. */
const OWN = join("server", "app", "plans", "[id]", "page_client-reference-manifest.js");

/** @param pages Next's output. Writes `plan-parts.json`: lists of paths below `/_next/`, empty where none was found. */
export async function namePlanParts(pages) {
  const folder = join(pages, "static", "chunks");
  const names = (await readdir(folder)).filter((name) => name.endsWith(".js"));
  const chunks = await Promise.all(names.map((name) => readFile(join(folder, name), "utf8")));
  const lists = { own: ownFiles(await readFile(join(pages, OWN), "utf8")), beside: filesOf(chunks) };
  await writeFile(join(pages, "plan-parts.json"), JSON.stringify(lists));
}

/** @param {string} manifest */
function ownFiles(manifest) {
  const scope = {};
  runInNewContext(manifest, { globalThis: scope });
  const [known] = Object.values(scope.__RSC_MANIFEST ?? {});
  const page = Object.keys(known?.entryJSFiles ?? {}).find((name) => name.endsWith("/plans/[id]/page"));
  if (page === undefined) return [];
  return [...known.entryJSFiles[page], ...(known.entryCSSFiles[page] ?? []).map(({ path }) => path)];
}

/** @param {readonly string[]} chunks */
function filesOf(chunks) {
  const id = chunks.map((chunk) => ASKED.exec(chunk)?.[1]).find((found) => found !== undefined);
  const loads = new RegExp(`\\b${id},\\w+=>\\{\\w+\\.v\\(\\w+=>Promise\\.all\\((\\[[^\\]]*\\])`);
  const list = chunks.map((chunk) => loads.exec(chunk)?.[1]).find((found) => found !== undefined);
  return list === undefined ? [] : JSON.parse(list);
}
