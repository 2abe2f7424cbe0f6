/** Months as month files, as they are and as they were signed off. */
import { listMonthEditions } from "#db/repos/month-edition-repo.ts";
import { listMonths } from "#db/repos/month-repo.ts";
import { readSetting } from "#db/repos/setting-repo.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { monthFileOf } from "#lib/programme/month-file.ts";
import { monthStateOf, monthStudioOf } from "#server/programme/read-month-file.ts";
import { type ExportedFile, textFile } from "./exported-file.ts";
import type { LeftOut } from "./plan-files.ts";
import { type StudioReader, WHOLE_STUDIO } from "./studio-reader.ts";

export function* monthFiles(reader: StudioReader, leftOut: LeftOut[]): Generator<ExportedFile> {
  // A month's file names the studio's calendar, which is made when somebody first opens a month.
  if (!readSetting(reader.db, "month")) return;
  for (const month of listMonths(reader.db, "")) {
    const path = `months/${month}.json`;
    const state = monthStateOf(reader, month);
    if (state.ok)
      yield textFile(
        path,
        canonicalJson(monthFileOf(state.value, monthStudioOf(reader, WHOLE_STUDIO, month, state.value))),
      );
    else leftOut.push({ path, why: state.error.message });
    for (const { number, fileJson } of listMonthEditions(reader.db, month).sort((a, b) => a.number - b.number))
      yield textFile(`months/${month}.edition-${number}.json`, fileJson);
  }
}
