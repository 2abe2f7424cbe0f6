/** Compares an exported folder with its manifest: every file it names, whole and unchanged. */
import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import { MANIFEST, type ManifestFile, parseStudioManifest, type StudioManifest } from "./manifest.ts";
import { StudioFilesRefused } from "./refused.ts";
import { travels } from "./tables.ts";

/** `where`: how a refusal names the export. Throws StudioFilesRefused. */
export async function verifyFiles(folder: string, where: string): Promise<StudioManifest> {
  const text = await readFile(join(folder, MANIFEST), "utf8").catch(() => undefined);
  if (text === undefined)
    throw new StudioFilesRefused(
      `${where} is not an export of a studio: it has no ${MANIFEST}. Name the folder that holds it.`,
    );
  const manifest = parseStudioManifest(text, where);
  for (const file of manifest.files) await verify(folder, file);
  const named = new Set(manifest.files.map(({ path }) => path));
  for (const table of Object.keys(manifest.tables)) {
    if (!travels(table))
      throw new StudioFilesRefused(
        `${where} holds "${table}", which this version of Springline does not know. Update Springline first.`,
      );
    if (!named.has(`tables/${table}.jsonl`))
      throw new StudioFilesRefused(
        `${where} is damaged: its ${MANIFEST} does not name tables/${table}.jsonl. Export the studio again.`,
      );
  }
  return manifest;
}

async function verify(folder: string, { path, bytes, sha256 }: ManifestFile): Promise<void> {
  const name = join(folder, ...path.split("/"));
  const there = await stat(name).catch(() => undefined);
  if (!there?.isFile())
    throw new StudioFilesRefused(`${path} is missing. Nothing was changed. Export the studio again.`);
  const hash = createHash("sha256");
  if (there.size === bytes) await pipeline(createReadStream(name), hash);
  if (there.size !== bytes || hash.digest("hex") !== sha256)
    throw new StudioFilesRefused(
      `${path} was changed after the export. Nothing was imported. Export the studio again.`,
    );
}
