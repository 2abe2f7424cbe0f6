/** The sentences of the rehearsals of a plan: what was measured, what of it can be taken and why not. Pure. */
import { LOOK_ONLY } from "#app/_session/previews.ts";
import { classClock } from "#lib/clock/clock.ts";
import { freeWords, ofLength } from "#lib/clock/length-words.ts";
import type { ChangeTake, NoMatch, RehearsalTake } from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import { agree, clockTime, itemName, plainNumber, plural } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { PlanState } from "#lib/protocol/messages.ts";

export const HOW_TO_REHEARSE =
  "Run the plan as it is now, without a class: say every line aloud, do every set-up, and tap when each is done. Your times then appear here.";
export const LOOKING_ON_DEVICES = "Looking for rehearsals on the studio’s devices.";
export const NO_ANSWER = "The studio’s server does not answer, so only the rehearsals kept in this browser are shown.";
export const NO_REHEARSAL = "No rehearsal of this plan yet.";
export const NO_SET_UP_MARKED = "You did not mark any set-up as done.";
export const WORK_STAYS = "The seconds of moves do not change.";
export const BACK_IN_WRITING =
  "This plan is signed off. Taking these times puts it back in writing; the signed edition does not change.";
const BEING_READ = "This plan is offered for reading and being read. Take it back before you take these times.";

/** Where a rehearsal comes from. */
export const OF_DRAFT = "of the draft, kept in this browser";
export const ofEditionWords = (edition: number, room: string): string => `of edition ${edition}, ${room}`;

/** Why nothing can be taken into a plan in this state, or null. */
export function whyNotTaken(state: PlanState, writes: boolean): string | null {
  if (!writes) return LOOK_ONLY;
  return state === "handed-in" ? BEING_READ : null;
}

export function takenWords(changes: number, rate: boolean): string {
  const parts = [...(changes > 0 ? [plural(changes, "change time")] : []), ...(rate ? ["your speaking rate"] : [])];
  return parts.join(" and ") || "nothing";
}

export function totalWords(before: Plan, after: Plan): string {
  const [was, is] = [classClock(before).total, classClock(after).total];
  const then = `${ofLength(is, after.lengthSeconds)}, ${freeWords(is, after.lengthSeconds)}`;
  return was === is ? `The class stays at ${then}.` : `The class would take ${then}; it takes ${clockTime(was)} now.`;
}

/** How fast the coach spoke; "" where the rate is a choice (`rateOfferWords`). */
export function measuredRateWords({ rate }: RehearsalTake): string {
  if (!rate) return "You said too little to measure how fast you speak.";
  return rate.to === rate.now
    ? `You speak at the plan’s rate: ${rate.now} syllables a second, ${measuredOver(rate)}.`
    : "";
}

export const rateOfferWords = (rate: NonNullable<RehearsalTake["rate"]>): string =>
  `Use your speaking rate: ${rate.to} syllables a second instead of ${rate.now}, ${measuredOver(rate)}.`;

const measuredOver = ({ lines, syllables }: NonNullable<RehearsalTake["rate"]>): string =>
  `measured over ${plural(lines, "line")} and ${plural(syllables, "syllable")}`;

/** Lines left out of the rate; "" for none. */
export const strangeLinesWords = (count: number): string =>
  count > 0 ? `${plural(count, "line was", "lines were")} tapped too soon or too late to count.` : "";

const NO_MATCH: Readonly<Record<NoMatch, string>> = {
  "item-gone": "taken out of the plan since",
  "other-move-before": "now comes after another move",
  "other-set-up": "now has another set-up",
};

/** What to know about one change before it is taken; "" for nothing. */
export function changeNote({ noMatch, planned, belowEstimate, estimate, to, now }: ChangeTake): string {
  if (noMatch !== null) return `${NO_MATCH[noMatch]} (${plainNumber(planned)} s planned then)`;
  return to !== now && belowEstimate ? `less than the ${plainNumber(estimate)} s estimated for a room of people` : "";
}

export function nameIn(plan: Plan, id: string): string {
  const item = itemById(plan, id);
  return item ? itemName(plan, item) : "an item taken out of the plan";
}

export function linesWords(lines: Rehearsed["lines"]): string {
  const longer = lines.filter(({ planned, took }) => took > planned + 1).length;
  const said = `${plural(lines.length, "line")} as you said ${agree(lines.length, "it", "them")}`;
  return longer > 0 ? `${said}, ${longer} of them more than a second longer than planned` : said;
}
