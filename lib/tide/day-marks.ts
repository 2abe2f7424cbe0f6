/** The classes of one day as marks on its rail, each with its words from the longest to the shortest. */

import { minuteOfDay } from "#lib/calendar/days.ts";
import { timeWords } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { tintOfSlot } from "./columns.ts";
import type { ToLabel } from "./rail-labels.ts";
import { clockOfMinute, type TideAxis, xOfMinute } from "./time-axis.ts";
import type { LabelPart, PlanStanding, TideMark } from "./types.ts";

export interface MarksOf {
  readonly month: MonthFile;
  readonly axis: TideAxis;
  /** Ids of the rooms shown, in the order of their lanes. */
  readonly rooms: readonly string[];
  readonly regulars: string | null;
  readonly formats: Formats;
}

const NARROWEST_PX = 6;

export function markOf({ month, axis, rooms, regulars, formats }: MarksOf, slot: MonthSlot): TideMark {
  const from = minuteOfDay(slot.start);
  const x = xOfMinute(axis, from);
  const standing = standingOf(month, slot);
  const coach = coachName(month, slot.coach);
  const lane = slot.room == null ? -1 : rooms.indexOf(slot.room);
  return {
    ...{ slot, x },
    width: Math.max(NARROWEST_PX, xOfMinute(axis, from + slot.minutes) - x),
    lane: lane < 0 ? null : lane,
    tint: tintOfSlot(month, slot),
    standing,
    chosen: regulars !== null && (slot.regulars?.includes(regulars) ?? false),
    out: slot.out === true,
    title: classTitle(month, slot),
    who: coach === undefined ? "?" : firstName(coach),
    open: slot.out ? "called off" : OPEN_WORDS[standing],
    words: slotSentence(month, slot, formats),
  };
}

function standingOf(month: MonthFile, slot: MonthSlot): PlanStanding {
  if (slot.plan == null) return "none";
  const plan = own(month.plans, slot.plan);
  if (!plan || plan.known === false) return "unknown";
  return plan.signed ? "signed" : "unsigned";
}

/** What a class is called: its theme, else its plan's title, else "Class". */
export function classTitle(month: MonthFile, slot: MonthSlot): string {
  const theme = slot.theme == null ? undefined : own(month.themes ?? {}, slot.theme)?.name;
  const plan = slot.plan == null ? undefined : own(month.plans, slot.plan)?.title;
  return theme || plan || "Class";
}

const coachName = (month: MonthFile, id: string | null | undefined): string | undefined =>
  id == null ? undefined : (own(month.coaches, id)?.name ?? "somebody else");

/** "Marta" of "Marta Reis". */
/** A pseudonym, "Former coach 3", is one name: its first word would be everybody's who has left. */
export const firstName = (name: string): string =>
  /^Former [a-z ]+ \d+$/.test(name) ? name : (name.split(" ")[0] ?? name);

const OPEN_WORDS: Readonly<Record<PlanStanding, string>> = {
  none: "no plan",
  unsigned: "not signed",
  unknown: "",
  signed: "",
};

/** A mark's words: whole; the coach by two letters; the theme's first word; no coach; not even what is open. */
export function toLabel({ slot, title, who, open, chosen, x, width }: TideMark): ToLabel {
  const short = title.split(/[,:;]/)[0] ?? title;
  const brief = short.split(" ")[0] ?? short;
  const part = (theme: string, coach: string, ends = open): LabelPart => ({
    ...{ slot: slot.id, theme, who: coach, open: ends, chosen },
  });
  const two = who.slice(0, 2);
  const ways = [
    part(title, who),
    part(title, two),
    part(short, two),
    part(brief, two),
    part(brief, ""),
    part(brief, "", ""),
  ];
  return { x0: x, x1: x + width, ways };
}

/** "18:00 to 18:50, Upper, trunk, Marta, Loft, Evening regulars, signed". */
function slotSentence(month: MonthFile, slot: MonthSlot, f: Formats): string {
  const end = (minuteOfDay(slot.start) + slot.minutes) % (24 * 60);
  const regulars = (slot.regulars ?? []).flatMap((id) => own(month.regulars, id)?.name ?? []);
  const said: Record<PlanStanding, string> = {
    none: "no plan",
    unsigned: "plan not signed",
    unknown: "a plan you may not read",
    signed: "plan signed",
  };
  const room = slot.room == null ? "no room" : (own(month.rooms, slot.room)?.name ?? "another room");
  return [
    `${timeWords(slot.start, f)} to ${timeWords(clockOfMinute(end), f)}`,
    classTitle(month, slot),
    coachName(month, slot.coach) ?? "no coach",
    room,
    ...regulars,
    said[standingOf(month, slot)],
    ...(slot.out ? ["called off"] : []),
    ...(slot.locked ? ["locked"] : []),
  ].join(", ");
}
