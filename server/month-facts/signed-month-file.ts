/** The file of a signed month. An edition never changes, so each is parsed and proved once, for whoever needs it. */
import type { MonthEditionRow } from "#db/repos/month-edition-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import type { MonthFile } from "#lib/month/types.ts";

type Row = Pick<MonthEditionRow, "fileJson" | "hash">;

/** By hash: devices, calendars and the look at changed classes ask every few minutes, each for a handful of months. */
const kept = new Map<string, { readonly json: string; readonly file: MonthFile }>();
const MOST_KEPT = 16;

/** The whole month, the same object for the same edition; undefined when there is none or it is damaged. */
export function signedMonthFile(row: Row | undefined): MonthFile | undefined {
  if (!row) return undefined;
  const { hash, fileJson } = row;
  const known = kept.get(hash);
  if (known?.json === fileJson) return known.file;
  if (sha256Hex(fileJson) !== hash) return undefined;
  const file = JSON.parse(fileJson) as MonthFile; // written by the sign-off only
  kept.delete(hash);
  kept.set(hash, { json: fileJson, file });
  for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
  return file;
}
