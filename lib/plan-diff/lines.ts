/** Changes of a script: its lines as people read them, told as sentences. */
import { readerOf } from "#lib/cues/as-read.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { beginWords, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { LineBegin, MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { quote } from "./field-words.ts";
import { type OtherLine, otherLines } from "./other-lines.ts";

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

/** One sentence for each line that went, came, moved or changed. */
export function scriptChanges(name: string, was: Read[] | undefined, is: Read[] | undefined): string[] {
  if (sameData(written(was), written(is))) return [];
  const others = otherLines(was ?? [], is ?? []);
  if (others.length === 0) return [`The script of ${name} is written differently (no lines).`];
  return others.map((other) => oneStop(lineSentence(name, other)));
}

/** What is quoted last may have its own full stop. */
const oneStop = (sentence: string): string => sentence.replace(/([.!?…]”)\.$/u, "$1");

function lineSentence(name: string, other: OtherLine<Read>): string {
  const line = (of: Read) => `A line of ${name} (${KIND_WORDS[of.kind]})`;
  switch (other.how) {
    case "added":
      return `${line(other.is)} was added: ${quote(other.is.read)}.`;
    case "removed":
      return `${line(other.was)} was removed: ${quote(other.was.read)}.`;
    case "moved":
      return `${line(other.is)} was moved ${placeOfLine(other.after)}: ${quote(other.is.read)}.`;
    case "changed":
      return changedSentence(name, other.was, other.is);
  }
}

/** Where a line stands now: "after “Breathe out.”", "to the beginning". */
export const placeOfLine = (after: Read | null): string => (after ? `after ${quote(after.read)}` : "to the beginning");

function changedSentence(name: string, was: Read, is: Read): string {
  const kind = kindWords(was, is);
  if (was.text === is.text && was.kind === is.kind)
    return `A line of ${name} (${kind}) ${atWords(is.at)}: ${quote(is.read)}.`;
  if (was.text === is.text)
    return `A line of ${name} (${KIND_WORDS[was.kind]}) became ${KIND_WORDS[is.kind]}: ${quote(is.read)}.`;
  if (was.read === is.read)
    return `A line of ${name} (${kind}) has other live fields and reads the same: ${quote(is.read)}.`;
  return `The words of ${name} (${kind}) changed: ${quote(was.read)} became ${quote(is.read)}.`;
}

const atWords = (at: LineBegin | undefined): string =>
  at ? `now begins ${beginWords(at)}` : "no longer has a time of its own";

export const kindWords = (was: Read, is: Read): string =>
  was.kind === is.kind ? KIND_WORDS[was.kind] : `${KIND_WORDS[was.kind]}, now ${KIND_WORDS[is.kind]}`;
