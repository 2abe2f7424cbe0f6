/** One export as a zip file, on a thread of its own; never rejects. */
import { rm } from "node:fs/promises";
import { join } from "node:path";
import { DatabaseRefused } from "#db/file/migrations.ts";
import { type ExportSetup, exportStudio } from "./export-studio.ts";
import { StudioFilesRefused } from "./refused.ts";
import { zipExport } from "./zip.ts";

/** Plain data: it is sent to a thread. */
export interface ExportJob {
  readonly setup: ExportSetup;
  /** An empty folder for it alone. */
  readonly work: string;
}

/** The zip file, or one sentence. */
export type ExportEnd = { readonly file: string } | { readonly problem: string };

export async function runExportJob({ setup, work }: ExportJob): Promise<ExportEnd> {
  try {
    const [folder, file] = [join(work, "files"), join(work, "studio.zip")];
    const manifest = exportStudio(setup, folder);
    await zipExport(folder, manifest, file);
    await rm(folder, { recursive: true });
    return { file };
  } catch (error) {
    return { problem: inWords(error) };
  }
}

function inWords(error: unknown): string {
  if (error instanceof StudioFilesRefused || error instanceof DatabaseRefused) return error.message;
  if (error instanceof Error && "code" in error && /ENOSPC|EDQUOT/.test(String(error.code)))
    return "The server's disk is full, so the export could not be made. Free some space there and try again.";
  return "The export could not be made. Ask whoever runs the server to look at its log.";
}
