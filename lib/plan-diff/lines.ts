/** Changes of a script: its lines as people read them, side by side. */
import { readerOf } from "#lib/cues/as-read.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { beginWords, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { LineBegin, MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { quote } from "./field-words.ts";

/** A line with its words as people read them. Two lines are the same only if they are written the same. */
export interface Read extends ScriptLine {
  readonly read: string;
}

/** One clock for all items of a plan. */
const reader = perValue((plan: Plan) => readerOf(plan));

export function readLines(plan: Plan, item: MoveItem): Read[] | undefined {
  const asRead = reader(plan);
  return item.script?.map((line) => ({ ...line, read: asRead(item, line.text) }));
}

const written = (lines: readonly Read[] | undefined): readonly ScriptLine[] | undefined =>
  lines?.map(({ read: _read, ...line }) => line);
const isSameLine = (a: Read | undefined, b: Read | undefined): boolean =>
  a?.kind === b?.kind && a?.text === b?.text && sameData(a?.at, b?.at);

/** The lines between the common start and the common end, side by side. */
export function scriptChanges(name: string, was: Read[] | undefined, is: Read[] | undefined): string[] {
  if (sameData(written(was), written(is))) return [];
  const pairs = otherLines(was ?? [], is ?? []);
  if (pairs.length === 0) return [`The script of ${name} is written differently (no lines).`];
  return pairs.flatMap(([gone, come]) => lineChange(name, gone, come));
}

/** Pairs of a line that went and one that came, in order; either may be missing. Empty when all lines are the same. */
export function otherLines(
  old: readonly Read[],
  now: readonly Read[],
): (readonly [Read | undefined, Read | undefined])[] {
  let start = 0;
  while (start < Math.min(old.length, now.length) && isSameLine(old[start], now[start])) start++;
  let end = 0;
  const room = Math.min(old.length, now.length) - start;
  while (end < room && isSameLine(old[old.length - 1 - end], now[now.length - 1 - end])) end++;
  const gone = old.slice(start, old.length - end);
  const come = now.slice(start, now.length - end);
  return Array.from({ length: Math.max(gone.length, come.length) }, (_, i) => [gone[i], come[i]] as const);
}

function lineChange(name: string, was: Read | undefined, is: Read | undefined): string[] {
  if (was && is) {
    if (isSameLine(was, is)) return [];
    const kind = kindWords(was, is);
    if (was.text === is.text && was.kind === is.kind)
      return [`A line of ${name} (${kind}) ${atWords(is.at)}: ${quote(is.read)}.`];
    if (was.text === is.text)
      return [`A line of ${name} (${KIND_WORDS[was.kind]}) became ${KIND_WORDS[is.kind]}: ${quote(is.read)}.`];
    if (was.read === is.read)
      return [`A line of ${name} (${kind}) has other live fields and reads the same: ${quote(is.read)}.`];
    return [`The words of ${name} (${kind}) changed: ${quote(was.read)} became ${quote(is.read)}.`];
  }
  if (is) return [`A line of ${name} (${KIND_WORDS[is.kind]}) was added: ${quote(is.read)}.`];
  return was ? [`A line of ${name} (${KIND_WORDS[was.kind]}) was removed: ${quote(was.read)}.`] : [];
}

const atWords = (at: LineBegin | undefined): string =>
  at ? `now begins ${beginWords(at)}` : "no longer has a time of its own";

export const kindWords = (was: Read, is: Read): string =>
  was.kind === is.kind ? KIND_WORDS[was.kind] : `${KIND_WORDS[was.kind]}, now ${KIND_WORDS[is.kind]}`;
