/**
 * In version 1 a slot's theme was words typed in the slot. Since version 2 a month has themes, and slots name one. The words
 * stay where they were: a device's copy from before may return at any time with a slot, or with letters, of that kind.
 */
import { sha256Hex } from "#lib/canonical/canonical.ts";
import type { MonthTheme } from "#lib/month/types.ts";
import { type EntryMap, SLOT_KEYS } from "./layout.ts";
import { type FlatKeys, words } from "./values.ts";

/** The words that the slot's theme was taken from. */
export const THEME_FROM = "themeFrom";

/** The same words give the same id wherever they are migrated. Undefined for no words. */
export function themeIdOf(typed: string): string | undefined {
  const name = themeName(typed);
  if (name === "") return undefined;
  const slug = name
    .toLowerCase()
    .normalize("NFKD")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 40);
  return `${slug === "" ? "theme" : slug}-${sha256Hex(name).slice(0, 8)}`;
}

export const themeName = (typed: string): string => typed.normalize("NFC").trim().replace(/\s+/g, " ");

/** The theme that words typed in a slot ask for, where they arrived late; undefined where what the slot names counts. */
export function themeOfSlot(flat: FlatKeys): string | undefined {
  const typed = words(flat.get("theme"));
  const from = words(flat.get(THEME_FROM));
  if (typed === from) return undefined;
  const named = flat.get(SLOT_KEYS.theme);
  // Somebody has chosen another theme since: the choice counts.
  return named === undefined
    ? from === ""
      ? themeIdOf(typed)
      : undefined
    : named === themeIdOf(from)
      ? themeIdOf(typed)
      : undefined;
}

/** The theme that only late words in a slot ask for. */
export function lateTheme(slot: EntryMap | undefined): { readonly id: string; readonly theme: MonthTheme } | undefined {
  const typed = words(slot?.get?.("theme"));
  const id = typed === "" || !slot ? undefined : themeOfSlot(new Map(slot.entries()));
  return id === undefined ? undefined : { id, theme: { name: themeName(typed) } };
}
