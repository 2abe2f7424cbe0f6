/** What a person can do to the pattern of a month: "this and later" and "all of the line" of a class, and the line's own rule. */
import * as Y from "yjs";
import { act, type Writer } from "#lib/doc/write.ts";
import { occurrencesOf } from "#lib/month/expand.ts";
import type { PatternLine } from "#lib/month/types.ts";
import { lineEntry, setEntry } from "./entries.ts";
import { mayBeTold, type Now } from "./keep-revisions.ts";
import { DOT, type EntryMap, monthParts, occurrenceId, occurrenceOf, RULE_KEYS, SLOT_KEYS } from "./layout.ts";
import type { MonthState } from "./month-reader.ts";
import { readMonthState } from "./read.ts";
import { flatOf, listOf } from "./values.ts";
import { changedEntries, put, type SlotChange, setMembers } from "./write.ts";

/** What a line says of every class; its date is its rule's. */
export type LineValuesChange = Omit<SlotChange, "date">;

/** The rule itself; null takes a part away. */
export type LineRuleChange = {
  readonly days?: readonly number[];
  readonly nth?: readonly number[] | null;
} & { readonly [K in "every" | "weekStart" | "from" | "to" | "count"]?: PatternLine[K] | null };

/** `now` in ms since the epoch. False when the id is taken. */
export function addLine(w: Writer, line: PatternLine, now: number): boolean {
  const { lines } = monthParts(w.doc);
  if (lines.has(line.id) || line.days.length === 0) return false;
  const order = Math.max(-1, ...[...lines.values()].map((map) => Number(map.get("order") ?? 0))) + 1;
  act(w, () => setEntry(lines, line.id, lineEntry(line, now, order)));
  return true;
}

/** "All of the line". What was changed in a single class of it stays as it was changed. */
export function changeLine(w: Writer, id: string, change: LineValuesChange): void {
  withLine(w, id, (map) => writeValues(map, change));
}

/**
 * "This and later": the line says something else from this class on. The classes before it keep what they had, as changed
 * occurrences, so that every class keeps its id.
 */
export function changeLineFrom(w: Writer, slotId: string, change: LineValuesChange): void {
  const at = occurrenceOf(slotId);
  if (!at) return;
  withLine(w, at.line, (map) => {
    const before = flatOf(map);
    keepEarlier(w.doc, at.line, at.date, (id) => {
      const { changed } = monthParts(w.doc);
      for (const [key] of changedEntries(change)) {
        if (changed.get(id + DOT + key) === undefined) put(changed, id + DOT + key, before.get(key) ?? null);
      }
      if (change.regulars) keepMembers(changed, id, listOf(before, "regulars") ?? [], change.regulars);
    });
    writeValues(map, change);
    // What was said of the later ones alone gives way: it is these that are meant.
    for (const date of datesFrom(w.doc, at.line, at.date)) dropChanged(w.doc, occurrenceId(at.line, date), change);
  });
}

/** Other days, weeks or bounds for all of the line. */
export function changeRule(w: Writer, id: string, rule: LineRuleChange): void {
  withLine(w, id, (map) => writeRule(map, rule));
}

/** The line as it would be with that rule. */
export function withRule(line: PatternLine, rule: LineRuleChange): PatternLine {
  const entries = Object.entries({ ...line, ...rule }).filter(([, value]) => value !== null && value !== undefined);
  return Object.fromEntries(entries) as unknown as PatternLine; // the line's own keys, without those that the rule takes away
}

/**
 * The rule from one class on. Those before it stay as single classes of the line; later ones that the new rule does not give are
 * gone, and those it gives are new.
 */
export function changeRuleFrom(w: Writer, slotId: string, rule: LineRuleChange): void {
  const at = occurrenceOf(slotId);
  const line = at && readMonthState(w.doc).pattern.find(({ id }) => id === at.line);
  if (!at || !line) return;
  withLine(w, at.line, (map) => {
    const { changed } = monthParts(w.doc);
    const earlier = keepEarlier(w.doc, at.line, at.date, (id, date) => {
      if (changed.get(`${id}${DOT}date`) === undefined) changed.set(`${id}${DOT}date`, date);
    });
    writeRule(map, rule);
    put(map, "from", at.date);
    if (line.count !== undefined && rule.count === undefined) put(map, "count", Math.max(1, line.count - earlier));
  });
}

/**
 * Takes a line out from a date on. Where people may have been told, its classes are called off one by one and the line ends with
 * this month; a new one just vanishes, and can be put back.
 */
export function takeOutLine(w: Writer, id: string, from: string, now: Now): void {
  const state = readMonthState(w.doc);
  const told = mayBeTold(state.made[id] ?? 0, now);
  withLine(w, id, (map) => {
    if (!told) return put(map, "deleted", now.at);
    const { changed } = monthParts(w.doc);
    for (const date of datesFrom(w.doc, id, from)) put(changed, occurrenceId(id, date) + DOT + SLOT_KEYS.out, true);
    put(map, "to", state.dates.to);
  });
}

export const putBackLine = (w: Writer, id: string): void => withLine(w, id, (map) => put(map, "deleted", undefined));

function writeValues(map: EntryMap, change: LineValuesChange): void {
  for (const [key, value] of changedEntries(change)) put(map, key, value ?? undefined);
  if (change.regulars) setMembers(membersOf(map), "regulars", change.regulars);
}

function writeRule(map: EntryMap, rule: LineRuleChange): void {
  for (const key of RULE_KEYS) if (rule[key] !== undefined) put(map, key, rule[key] ?? undefined);
  if (rule.days && rule.days.length > 0) setMembers(membersOf(map), "days", rule.days);
  if (rule.nth !== undefined) setMembers(membersOf(map), "nth", rule.nth ?? []);
}

const membersOf = (map: EntryMap) => ({
  flat: flatOf(map),
  set: (key: string, value: unknown) => put(map, key, value ?? undefined),
});

/** Does something to each occurrence of this month before a date; returns how many the line gave before it, in all. */
function keepEarlier(doc: Y.Doc, lineId: string, before: string, keep: (id: string, date: string) => void): number {
  const state = readMonthState(doc);
  const line = state.pattern.find(({ id }) => id === lineId);
  if (!line) return 0;
  for (const { id, date } of occurrencesOf(line, state)) if (date < before) keep(id, date);
  const { count: _, except: _e, ...rule } = line;
  return occurrencesOf(rule, { dates: { from: line.from ?? state.dates.from, to: state.dates.to } }).filter(
    ({ date }) => date < before,
  ).length;
}

function datesFrom(doc: Y.Doc, lineId: string, from: string): string[] {
  const state: MonthState = readMonthState(doc);
  const line = state.pattern.find(({ id }) => id === lineId);
  return line
    ? occurrencesOf(line, state)
        .map(({ date }) => date)
        .filter((date) => date >= from)
    : [];
}

function dropChanged(doc: Y.Doc, id: string, change: LineValuesChange): void {
  const { changed } = monthParts(doc);
  for (const [key] of changedEntries(change)) put(changed, id + DOT + key, undefined);
  if (change.regulars)
    for (const key of [...changed.keys()]) if (key.startsWith(`${id}${DOT}regulars`)) changed.delete(key);
}

function keepMembers(changed: Y.Map<unknown>, id: string, had: readonly string[], now: readonly string[]): void {
  had.forEach((member, rank) => {
    const key = `${id}${DOT}regulars${DOT}${member}`;
    if (changed.get(key) === undefined) changed.set(key, rank);
  });
  for (const member of now) {
    const key = `${id}${DOT}regulars${DOT}${member}`;
    if (!had.includes(member) && changed.get(key) === undefined) changed.set(key, null);
  }
}

function withLine(w: Writer, id: string, change: (map: EntryMap) => void): void {
  const map = monthParts(w.doc).lines.get(id);
  if (map instanceof Y.Map) act(w, () => change(map));
}
