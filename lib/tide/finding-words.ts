/** What each rule found, in the few words that a day's line has room for. The whole sentence is the finding's message. */

import { dateOfDay, dayNumber, isoWeekday } from "#lib/calendar/days.ts";
import { timesIn } from "#lib/formats/canonical-times.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { percent, signedPercent } from "#lib/formats/percent.ts";
import type { MonthFile, MonthFinding, MonthSlot } from "#lib/month/types.ts";
import { plural, secondsWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { groupWords } from "./columns.ts";
import { classTitle, firstName } from "./day-marks.ts";
import { tideHours } from "./hours.ts";

export interface FindingPlace {
  readonly month: MonthFile;
  readonly slot: (id: string) => MonthSlot | undefined;
  /** Whose work is shown: others are named. */
  readonly regulars: string | null;
  readonly formats: Formats;
  /** Whether there is room for these words; left out: there always is. */
  readonly fits?: (words: string) => boolean;
}

interface Told {
  readonly finding: MonthFinding;
  /** The id's parts after the rule's name. */
  readonly parts: readonly string[];
  readonly first: MonthSlot | undefined;
  readonly last: MonthSlot | undefined;
  readonly place: FindingPlace;
}

const number = (value: unknown): number => (typeof value === "number" ? value : 0);
const coachOf = ({ place: { month }, parts }: Told): string =>
  firstName(own(month.coaches, parts[0] ?? "")?.name ?? "A coach");
const slotCoach = ({ place: { month }, first }: Told): string =>
  firstName(own(month.coaches, first?.coach ?? "")?.name ?? "The coach");
/** "Early risers: " for regulars whose work is not the one that is shown. */
const whose = ({ place: { month, regulars }, parts }: Told): string =>
  parts[0] === undefined || parts[0] === regulars ? "" : `${own(month.regulars, parts[0])?.name ?? "Others"}: `;
const group = (id: string | undefined): string => GROUPS.find((one) => one === id)?.replaceAll("-", " ") ?? "a group";

const WORDS: Readonly<Record<string, (told: Told) => string>> = {
  "room-clash": (t) =>
    `${own(t.place.month.rooms, t.parts[0] ?? "")?.name ?? "A room"} twice at ${t.last?.start ?? ""}`,
  "coach-clash": (t) => `${coachOf(t)} twice at ${t.last?.start ?? ""}`,
  "coach-away": (t) =>
    t.finding.values.why === "away" ? `${slotCoach(t)} is away` : `${slotCoach(t)} is not free then`,
  "more-people-than-machines": ({ finding: { values } }) =>
    `${plural(number(values.people), "person", "people")}, ${plural(number(values.machines), "machine")}`,
  "other-equipment": () => "plan for other machines",
  "plan-too-long": ({ finding: { values } }) => `plan ${secondsWords(number(values.seconds))} too long`,
  "no-coach": () => "no coach",
  "no-room": () => "no room",
  "no-plan": () => "no plan",
  "unsigned-plan": () => "not signed",
  "plan-unknown": () => "a plan not shown to you",
  "coach-role": (t) => `${slotCoach(t)} is no coach`,
  "short-recovery": (t) => `${whose(t)}${group(t.parts[1])} after ${tideHours(number(t.finding.values.minutes))}`,
  "heavy-twice-a-day": (t) => `${whose(t)}${group(t.parts[1])} worked hard twice`,
  "too-alike": (t) => `${whose(t)}${percent(number(t.finding.values.likeness))} like the last`,
  "week-rises-much": (t) => `${whose(t)}week ${signedPercent(number(t.finding.values.change))} work`,
  "little-variety": (t) => `${whose(t)}only ${plural(number(t.finding.values.distinct), "move")} this week`,
  "theme-not-kept": (t) => `${t.first ? classTitle(t.place.month, t.first) : "Theme"}: not what it promises`,
  "coach-long-day": (t) => `${coachOf(t)}: ${tideHours(number(t.finding.values.minutes))} of classes`,
  "coach-talks-long": (t) => `${coachOf(t)} talks ${tideHours(number(t.finding.values.seconds) / 60)}`,
  "coach-gap-short": (t) => `${coachOf(t)}: ${number(t.finding.values.minutes)} min between classes`,
  "coach-rest-short": (t) => `${coachOf(t)}: only ${tideHours(number(t.finding.values.minutes))} of rest`,
  "time-skipped": (t) => `the clock skips ${t.first?.start ?? "this time"}`,
  "time-twice": (t) => `${t.first?.start ?? "this time"} comes twice`,
  "on-a-holiday": (t) => `class on ${own(t.place.month.holidays ?? {}, t.first?.date ?? "") ?? "a holiday"}`,
};

function toldOf(finding: MonthFinding, place: FindingPlace): Told {
  const parts = finding.id.split(":").slice(1);
  return {
    finding,
    parts,
    place,
    first: place.slot(finding.slots[0] ?? ""),
    last: place.slot(finding.slots.at(-1) ?? ""),
  };
}

const shortFinding = (finding: MonthFinding, place: FindingPlace): string =>
  timesIn(own(WORDS, finding.rule)?.(toldOf(finding, place)) ?? finding.message, place.formats);

/** Several findings that are one thing to mend, in one line: muscles of one pair of classes, one coach's classes. */
export function shortTogether(findings: readonly MonthFinding[], place: FindingPlace): string {
  const [first] = findings;
  if (!first) return "";
  if (findings.length === 1) return shortFinding(first, place);
  if (first.rule === "coach-role") return `${shortFinding(first, place)}, ${findings.length} times`;
  const told = toldOf(first, place);
  const groups = findings.map((finding) => group(toldOf(finding, place).parts[1]));
  const ends =
    first.rule === "short-recovery" ? `after ${tideHours(number(first.values.minutes))}` : "worked hard twice";
  const inFull = `${whose(told)}${groups.join(", ")} ${ends}`;
  const rest = `${groups.length} muscle groups ${ends}`;
  const ways = [inFull, `${whose(told)}${groups[0]} and ${groups.length - 1} more ${ends}`, `${whose(told)}${rest}`];
  return ways.find((words) => place.fits?.(words) ?? true) ?? rest;
}

/** What makes findings one thing to mend. */
export function togetherKey(finding: MonthFinding, place: FindingPlace): string {
  const { parts, first } = toldOf(finding, place);
  if (finding.rule === "coach-role") return `coach-role ${first?.coach ?? ""}`;
  if (finding.rule === "short-recovery" || finding.rule === "heavy-twice-a-day")
    return `${finding.rule} ${parts[0]} ${finding.slots.join(" ")} ${number(finding.values.minutes)}`;
  return finding.id;
}

/** The day at whose height a finding stands: the later one of a pair, the end of a week; null for the whole month. */
export function dayOfFinding(finding: MonthFinding, place: FindingPlace): string | null {
  const { first, last } = toldOf(finding, place);
  if (finding.rule === "theme-promise-missed" || !first || !last) return null;
  if (finding.rule === "week-rises-much" || finding.rule === "little-variety") {
    const day = dayNumber(last.date);
    return dateOfDay(day + 7 - isoWeekday(last.date));
  }
  return last.date;
}

/** "shoulders, heavy, 23 h after the last". `minutes`: of rest since the heavy day before, where there is one. */
export function groupCellWords(
  id: Parameters<typeof groupWords>[0],
  heavy: boolean,
  minutes: number | undefined,
): string {
  const rest = minutes === undefined ? "" : `, ${tideHours(minutes)} after the last`;
  return `${groupWords(id)}, ${heavy ? "heavy" : "light"}${rest}`;
}
