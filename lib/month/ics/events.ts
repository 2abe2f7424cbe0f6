/** The classes of a month as events of a calendar (VEVENT, RFC 5545 §3.6.1). */
import { expandMonth } from "../expand.ts";
import { clockOfMonth, timeSlot } from "../instants.ts";
import type { TimedSlot } from "../sums-types.ts";
import type { MonthFile, MonthPlan, MonthSlot } from "../types.ts";
import { textValue } from "./text.ts";
import { uuidOfName } from "./uuid.ts";

/** Whose classes: everybody's, one coach's or one room's. */
export type CalendarOf =
  | { readonly coach?: undefined; readonly room?: undefined }
  | { readonly coach: string; readonly room?: undefined }
  | { readonly room: string; readonly coach?: undefined };

export interface CalendarEvent {
  readonly id: string;
  /** ms since the epoch. */
  readonly start: number;
  readonly sequence: number;
  /** The instant of its last revision, as the month's file writes it. */
  readonly stamp: string;
  /** Unfolded, from BEGIN to END. */
  readonly lines: readonly string[];
}

/**
 * The events of `from` to `to`, in no order. A class that a coach no longer gives, or that left a room, stays in their
 * calendar as cancelled: a calendar that only loses an entry leaves it on the phones that have it.
 */
export function eventsOf(month: MonthFile, of: CalendarOf): CalendarEvent[] {
  const { from, to } = month.dates;
  const clock = clockOfMonth(month);
  return expandMonth(month)
    .filter(({ date }) => date >= from && date <= to)
    .flatMap((slot) => {
      const part = partIn(slot, of);
      return part === "none" ? [] : [toEvent(month, timeSlot(slot, clock), part === "former")];
    });
}

/** '2026-02-21T10:00:00Z' as '20260221T100000Z'. */
export const stampOf = (instant: string): string => instant.replaceAll(/[-:]/g, "");

function partIn(slot: MonthSlot, { coach, room }: CalendarOf): "now" | "former" | "none" {
  if (coach !== undefined) return partOf(coach, slot.coach, slot.formerCoaches);
  if (room !== undefined) return partOf(room, slot.room, slot.formerRooms);
  return "now";
}

function partOf(id: string, now: string | null | undefined, former: readonly string[] = []): "now" | "former" | "none" {
  if (now === id) return "now";
  return former.includes(id) ? "former" : "none";
}

function toEvent(month: MonthFile, { slot, from }: TimedSlot, former: boolean): CalendarEvent {
  const event = { id: slot.id, start: from, sequence: slot.sequence ?? 0, stamp: slot.changedAt ?? month.changedAt };
  const said = [...identity(month, event), ...content(month, slot, former || slot.out === true)];
  return { ...event, lines: ["BEGIN:VEVENT", ...said, "END:VEVENT"] };
}

function identity(
  month: MonthFile,
  { id, stamp, sequence }: Pick<CalendarEvent, "id" | "stamp" | "sequence">,
): string[] {
  return [
    `UID:${uuidOfName(month.studio.uid, `slot/${id}`)}`,
    // Without METHOD, DTSTAMP is when the event was last revised (§3.8.7.2), so it does not depend on when it is read.
    `DTSTAMP:${stampOf(stamp)}`,
    `LAST-MODIFIED:${stampOf(stamp)}`,
    `SEQUENCE:${sequence}`,
  ];
}

function content(month: MonthFile, slot: MonthSlot, cancelled: boolean): string[] {
  const room = ofId(month.rooms, slot.room);
  const at = `${slot.date.replaceAll("-", "")}T${slot.start.replace(":", "")}00`;
  return [
    `DTSTART;TZID=${month.zone}:${at}`,
    `DURATION:PT${slot.minutes}M`,
    `SUMMARY:${textValue(summaryOf(month, slot))}`,
    ...(room === undefined ? [] : [`LOCATION:${textValue(room.name)}`]),
    `DESCRIPTION:${textValue(descriptionOf(month, slot))}`,
    `STATUS:${cancelled ? "CANCELLED" : "CONFIRMED"}`,
    `TRANSP:${cancelled ? "TRANSPARENT" : "OPAQUE"}`,
  ];
}

/** A theme without words says nothing, so the plan's title stands in for it too. */
const summaryOf = (month: MonthFile, slot: MonthSlot): string =>
  ofId(month.themes ?? {}, slot.theme)?.name || knownPlanOf(month, slot)?.title || "Class";

function descriptionOf(month: MonthFile, slot: MonthSlot): string {
  const coach = ofId(month.coaches, slot.coach);
  const lines = coach === undefined ? [] : [`Coach: ${coach.name}`];
  return [...lines, planWords(knownPlanOf(month, slot))].join("\n");
}

type Known = Exclude<MonthPlan, { readonly known: false }>;

/** A plan that its readers may not read is none here: not even its title leaves the studio. */
function knownPlanOf(month: MonthFile, slot: MonthSlot): Known | undefined {
  const plan = ofId(month.plans, slot.plan);
  return plan === undefined || plan.known === false ? undefined : plan;
}

function planWords(plan: Known | undefined): string {
  if (plan === undefined) return "No plan yet";
  if (!plan.signed) return `Plan: ${plan.title}, not signed`;
  return plan.edition === undefined ? `Plan: ${plan.title}, signed` : `Plan: ${plan.title}, edition ${plan.edition}`;
}

/** Ids may be "constructor". */
export const ofId = <T>(all: Readonly<Record<string, T>>, id: string | null | undefined): T | undefined =>
  id != null && Object.hasOwn(all, id) ? all[id] : undefined;
