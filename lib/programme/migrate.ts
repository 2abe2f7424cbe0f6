/** Updates a month document written by an older version. Never drops a key. */
import * as Y from "yjs";
import { type DocMigration, type Migration, migrate } from "#lib/doc/migrate.ts";
import { setEntry, themeEntry } from "./entries.ts";
import { MONTH_DOC_VERSION, monthParts, SLOT_KEYS } from "./layout.ts";
import { THEME_FROM, themeIdOf, themeName } from "./typed-themes.ts";
import { words } from "./values.ts";

/** Version 1 is the first. Since version 2 slots name a theme of the month. */
const MONTH_STEPS: readonly DocMigration[] = [{ to: 2, run: typedThemes }];

/** Runs the steps that a month document still needs. A document newer than this program is left untouched. */
export function migrateMonth(
  doc: Y.Doc,
  steps: readonly DocMigration[] = MONTH_STEPS,
  current: number = MONTH_DOC_VERSION,
): Migration {
  return migrate(doc, steps, current);
}

/** Each slot's words become a theme of that name, which the slot names. The words stay where they are. */
function typedThemes(doc: Y.Doc): void {
  const { slots, themes } = monthParts(doc);
  for (const map of slots.values()) {
    if (!(map instanceof Y.Map)) continue;
    const typed = words(map.get("theme"));
    const id = themeIdOf(typed);
    if (id === undefined) continue;
    if (!themes.has(id)) setEntry(themes, id, themeEntry({ name: themeName(typed) }));
    map.set(SLOT_KEYS.theme, id);
    map.set(THEME_FROM, typed);
  }
}
