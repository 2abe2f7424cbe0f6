/** The chosen finding as it stands at the top of the sheet: when, and what. */
import { timesIn } from "#lib/formats/canonical-times.ts";
import { dayAndTime, dayWords } from "#lib/formats/dates.ts";
import type { MonthFinding } from "#lib/month/types.ts";
import { listWords, sentenceCase } from "#lib/plan/format.ts";
import { dayOfFinding, type FindingPlace } from "./finding-words.ts";
import { tideHours } from "./hours.ts";

export interface FindingSentence {
  /** "Thursday 12 March, 18:00." */
  readonly when: string;
  readonly words: string;
}

const groupOf = ({ id }: MonthFinding): string => (id.split(":")[2] ?? "").replaceAll("-", " ");

/** `findings`: one, or several that are one thing to mend. */
export function findingSentence(findings: readonly MonthFinding[], place: FindingPlace): FindingSentence {
  const [first] = findings;
  const f = place.formats;
  if (!first) return { when: "", words: "" };
  const day = dayOfFinding(first, place);
  const [a, b] = [place.slot(first.slots[0] ?? ""), place.slot(first.slots.at(-1) ?? "")];
  const when =
    day === null ? "The whole month." : b?.date === day ? `${dayAndTime(day, b.start, f)}.` : `${dayWords(day, f)}.`;
  if (first.rule !== "short-recovery" || !a || !b) return { when, words: timesIn(first.message, f) };
  const { minutes, least } = first.values;
  const groups = sentenceCase(listWords(findings.map(groupOf)));
  return {
    when,
    words: `${groups} worked hard on ${dayWords(a.date, f)}. Rest: ${tideHours(Number(minutes))}; the studio asks for ${tideHours(Number(least))}.`,
  };
}
