/** Entries of a month as keys and texts. Shared texts are created only here, together with the entry. */
import * as Y from "yjs";
import { setText } from "#lib/doc/write.ts";
import type { MonthSlot, MonthTheme, PatternLine, Regulars, SlotValues } from "#lib/month/types.ts";
import { DOT, type EntryMap, MONTH_SHARE_KEY, NOTE_OWN, RULE_KEYS, SLOT_KEYS, wholeMinutes } from "./layout.ts";
import { THEME_FROM } from "./typed-themes.ts";
import { words } from "./values.ts";

/** What an entry holds: plain values, of which undefined is none, and texts. */
export interface Entry {
  readonly values: readonly (readonly [key: string, value: unknown])[];
  readonly texts: Readonly<Record<string, string>>;
}

/** A list as one key a member, holding its rank, and a key that says that it was given. */
export function listEntries(list: string, members: readonly (string | number)[]): [string, unknown][] {
  return [[list, true], ...members.map((member, rank): [string, unknown] => [list + DOT + member, rank])];
}

/** The plain values of a slot under the document's keys; values that are left out have none. */
export function slotEntries(slot: Partial<MonthSlot>): [string, unknown][] {
  const entries: [string, unknown][] = [];
  for (const [name, key] of Object.entries(SLOT_KEYS)) {
    const value = slot[name as keyof typeof SLOT_KEYS];
    if (value !== undefined) entries.push([key, name === "minutes" ? wholeMinutes(Number(value)) : value]);
  }
  return slot.regulars === undefined ? entries : [...entries, ...listEntries("regulars", slot.regulars)];
}

const noted = ({ note }: Pick<SlotValues, "note">): [string, unknown][] => (note === "" ? [[NOTE_OWN, true]] : []);

/** `madeAt` in ms since the epoch. */
export const slotEntry = (slot: Omit<MonthSlot, "id">, madeAt: number): Entry => ({
  values: [...slotEntries(slot), ...noted(slot), ["madeAt", madeAt]],
  texts: { note: slot.note ?? "" },
});

/** `order`: its place among the lines. */
export function lineEntry(line: Omit<PatternLine, "id">, madeAt: number, order: number): Entry {
  const lists = (["days", "nth", "except"] as const).flatMap((list) => {
    const members = line[list];
    return members === undefined ? [] : listEntries(list, members);
  });
  const rule = RULE_KEYS.map((key): [string, unknown] => [key, line[key]]);
  const own: [string, unknown][] = [
    ["madeAt", madeAt],
    ["order", order],
  ];
  return {
    values: [...slotEntries(line), ...noted(line), ...rule, ...lists, ...own],
    texts: { note: line.note ?? "" },
  };
}

export function themeEntry({ name, promised, shares }: MonthTheme): Entry {
  const each = Object.entries(shares ?? {}).map(([group, share]): [string, unknown] => [
    MONTH_SHARE_KEY + group,
    share,
  ]);
  return { values: [["promised", promised], ["shares", shares && true], ...each], texts: { name } };
}

export const regularsEntry = ({ name, people }: Regulars): Entry => ({ values: [["people", people]], texts: { name } });

/**
 * Makes an entry, or makes the one with that id hold just this: it keeps its map and texts, so that what others type in it meanwhile
 * is not lost. Only in a transaction.
 */
export function setEntry(entries: Y.Map<EntryMap>, id: string, { values, texts }: Entry): void {
  const there = entries.get(id);
  const map: EntryMap = there instanceof Y.Map ? there : new Y.Map();
  const wanted = new Map(values.filter(([, value]) => value !== undefined));
  const typed = words(there?.get("theme"));
  if (typed !== "") wanted.set(THEME_FROM, typed);
  if (there instanceof Y.Map)
    for (const [key, value] of [...there])
      if (!wanted.has(key) && !(value instanceof Y.AbstractType)) there.delete(key);
  for (const [key, value] of wanted) if (there?.get(key) !== value) map.set(key, value);
  for (const [key, said] of Object.entries(texts)) {
    const text = there?.get(key);
    if (text instanceof Y.Text) setText({ doc: text.doc as Y.Doc, origin: "server" }, text, said);
    else map.set(key, new Y.Text(said));
  }
  if (map !== there) entries.set(id, map);
}
