/** What to mend, at the height of its day. */
import type { MonthFinding, MonthLevel } from "#lib/month/types.ts";
import { dayOfFinding, type FindingPlace, shortTogether, togetherKey } from "./finding-words.ts";
import type { FindingLine } from "./types.ts";

const ORDER: readonly MonthLevel[] = ["must", "look", "info"];
/** Said on the rail itself, in the words of the class. */
const ON_THE_RAIL = new Set(["no-plan", "unsigned-plan", "plan-unknown"]);

export interface DayFindings {
  readonly byDay: ReadonlyMap<string, readonly FindingLine[]>;
  /** Of the month as a whole. */
  readonly whole: readonly MonthFinding[];
}

/** Lines by day, the gravest first. `everything`: also what the rail says already, for a list in words. */
export function findingsByDay(
  findings: readonly MonthFinding[],
  place: FindingPlace,
  days: readonly string[],
  everything = false,
): DayFindings {
  const [firstDay = "", lastDay = ""] = [days[0], days.at(-1)];
  const together = new Map<string, { day: string; findings: MonthFinding[] }>();
  const whole: MonthFinding[] = [];
  for (const finding of findings) {
    if (!everything && ON_THE_RAIL.has(finding.rule)) continue;
    const day = dayOfFinding(finding, place);
    if (day === null) {
      whole.push(finding);
      continue;
    }
    const key = togetherKey(finding, place);
    const at = day > lastDay ? lastDay : atEarliest(day, firstDay);
    const one = together.get(key);
    if (one) one.findings.push(finding);
    else together.set(key, { day: at, findings: [finding] });
  }
  return { byDay: linesByDay([...together.values()], place), whole };
}

const atEarliest = (day: string, first: string): string => (day < first ? first : day);

function linesByDay(
  all: readonly { readonly day: string; readonly findings: readonly MonthFinding[] }[],
  place: FindingPlace,
): Map<string, FindingLine[]> {
  const byDay = new Map<string, FindingLine[]>();
  for (const { day, findings } of all) {
    const [first] = findings;
    if (!first) continue;
    const line = { id: first.id, level: first.level, words: shortTogether(findings, place), findings };
    byDay.set(day, [...(byDay.get(day) ?? []), line]);
  }
  for (const lines of byDay.values()) lines.sort((a, b) => ORDER.indexOf(a.level) - ORDER.indexOf(b.level));
  return byDay;
}
