/** Where a printed month stands beside its signed edition. Pure. */
import { dayOfMoment } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { agree, listWords, plural } from "#lib/plan/format.ts";
import type { SignedMonth } from "#lib/protocol/messages.ts";

/** "Edition 2, signed by Ines Duarte, Tuesday 3 November." */
export const signingWords = ({ number, byName, at }: SignedMonth, f: Formats): string =>
  `Edition ${number}, signed by ${byName}, ${dayOfMoment(at, f)}.`;

const UNKNOWN = "What has changed since is not shown: the signed edition is not here yet.";

interface Since {
  readonly known: boolean;
  readonly changes: readonly unknown[];
  readonly renamed: readonly unknown[];
}

/** "2 classes and 1 name"; empty where nothing is different. */
export function differentWords({ changes, renamed }: Pick<Since, "changes" | "renamed">): string {
  const classes = changes.length > 0 ? [plural(changes.length, "class", "classes")] : [];
  return listWords([...classes, ...(renamed.length > 0 ? [plural(renamed.length, "name")] : [])]);
}

/** "2 classes are different now; they have dots under them." */
export function sinceWords({ known, changes, renamed }: Since): string {
  if (!known) return UNKNOWN;
  const names = renamed.length === 0 ? "" : ` ${plural(renamed.length, "name is", "names are")} different now.`;
  if (changes.length === 0) return `Every class is as it was signed.${names}`;
  return `${plural(changes.length, "class is", "classes are")} different now; ${agree(changes.length, "it has", "they have")} dots underneath.${names}`;
}

/** Of a room's week, `changed` of its lines. */
export function weekSinceWords({ known }: Pick<Since, "known">, changed: number): string {
  if (!known) return UNKNOWN;
  return changed === 0 ? "This week is as it was signed." : "What is different now has its words beside it.";
}
