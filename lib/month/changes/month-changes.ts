/** All that differs between two states of one month, in sentences: its classes first, then what they rest on. */
import { own } from "#lib/plan/lookup.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { ById, MonthFile, MonthPlan } from "../types.ts";
import { changeSentence } from "./change-words.ts";
import { slotChanges } from "./slot-changes.ts";

/** The month was changed and changed back: the same but for the times of its changes. */
const PUT_BACK = "Something was changed and put back: all is as it was, only the time of its last change is another.";

/** Empty only for two files that say the same. */
export function monthChanges(was: MonthFile, now: MonthFile): string[] {
  if (sameData(was, now)) return [];
  const slots = slotChanges(was, now);
  const sentences = [
    ...slots.map((change) => changeSentence(change, { was, now })),
    ...planChangesOf(was, now),
    ...entries("Room", was.rooms, now.rooms),
    ...entries("Coach", was.coaches, now.coaches),
    ...entries("Regulars", was.regulars, now.regulars),
    ...entries("Theme", was.themes, now.themes),
    ...wholes(was, now, slots.length > 0),
  ];
  return sentences.length > 0 ? sentences : [PUT_BACK];
}

function planChangesOf(was: MonthFile, now: MonthFile): string[] {
  const both = Object.keys(now.plans).filter((id) => own(was.plans, id) !== undefined);
  return both.flatMap((id) => planChange(own(was.plans, id), own(now.plans, id)) ?? []);
}

function planChange(was: MonthPlan | undefined, now: MonthPlan | undefined): string | undefined {
  if (!was || !now || sameData(was, now)) return undefined;
  if (now.known === false) return `The plan “${was.title}” is not known any more.`;
  const plan = `The plan “${now.title}”`;
  if (was.known === false) return `${plan} is known now.`;
  if (!was.signed && now.signed) return `${plan} is signed now.`;
  if (was.signed && !now.signed) return `${plan} is not signed any more.`;
  if (was.edition !== now.edition) return `${plan}: edition ${now.edition}, was ${was.edition}.`;
  return `${plan} was changed.`;
}

type Entry = { readonly name: string };

/** Only those that both have: others come and go with the classes that name them. */
function entries(what: string, was: ById<Entry> = {}, now: ById<Entry> = {}): string[] {
  return Object.entries(now).flatMap(([id, entry]) => {
    const before = own(was, id);
    if (!before || sameData(before, entry)) return [];
    if (before.name !== entry.name) return `${what} ${before.name} is now called ${entry.name}.`;
    return `${what} ${entry.name}: something else is said about it now.`;
  });
}

function wholes(was: MonthFile, now: MonthFile, slotsDiffer: boolean): string[] {
  const differs = (key: keyof MonthFile) => !sameData(was[key] ?? null, now[key] ?? null);
  return [
    was.title !== now.title && `The month is called “${now.title}”, was “${was.title}”.`,
    was.zone !== now.zone && `The studio’s time zone is ${now.zone}, was ${was.zone}.`,
    differs("dates") && "The month has other days.",
    differs("holidays") && "The holidays are others.",
    !slotsDiffer && differs("pattern") && "The weekly pattern was changed; its classes in this month are the same.",
    (differs("limits") || differs("standards")) && "The studio’s limits for months were changed.",
  ].filter((sentence) => sentence !== false);
}
