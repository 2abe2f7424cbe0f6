/** The plain values of a month in words, for what an undo did and for what somebody else set over one's own. */
import type * as Y from "yjs";
import type { ValueAt, ValuePlaces, ValueWords } from "#lib/client/doc-session/description.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { monthParts } from "#lib/programme/layout.ts";
import { readDeletedSlots, readSlotById } from "#lib/programme/read.ts";
import type { MonthPageProps } from "./month-types.ts";
import { dayWords, NOT_SHOWN, slotName } from "./month-words.ts";

export const monthValues = (doc: Y.Doc): ValuePlaces => ({ root: null, texts: {}, entries: monthParts(doc).slots });

type Named = Pick<MonthPageProps, "people" | "rooms" | "plans">;
const named = (list: readonly { readonly id: string; readonly name: string }[], id: unknown): string =>
  id === undefined ? "nobody" : (list.find((one) => one.id === id)?.name ?? NOT_SHOWN);
const words = (value: unknown): string => (value === undefined || value === "" ? "nothing" : `“${String(value)}”`);

const FIELDS: Readonly<Record<string, readonly [name: string, says: (value: unknown, of: Named) => string]>> = {
  date: ["the day", (value) => dayWords(String(value))],
  time: ["the beginning", String],
  minutes: ["the length", (value) => `${value} min`],
  themeId: ["the theme", words],
  note: ["the note", words],
  coachId: ["the coach", (value, { people }) => named(people, value)],
  roomId: ["the room", (value, { rooms }) => (value === undefined ? "none" : named(rooms, value))],
  planId: ["the plan", (value, { plans }) => planName(plans, value)],
};

export function monthValueWords({ id, key, value }: ValueAt, doc: Y.Doc, of: Named): ValueWords | undefined {
  const living = readSlotById(doc, id);
  const slot = living ?? readDeletedSlots(doc).find((gone) => gone.slot.id === id)?.slot;
  if (!slot) return undefined;
  if (key === "deleted") return takenOutWords(slotName(slot), value);
  const field = own(FIELDS, key);
  return field && living && { name: `${field[0]} of ${slotName(slot)}`, says: field[1](value, of) };
}

function planName(plans: MonthPageProps["plans"], id: unknown): string {
  if (id === undefined) return "none";
  const plan = plans.find((one) => one.id === id);
  return plan ? planTitle(plan.title) : NOT_SHOWN;
}

function takenOutWords(name: string, value: unknown): ValueWords {
  if (value === undefined)
    return { name, says: "in the month", did: { past: `put ${name} back`, perfect: "taken it out" } };
  return { name, says: "taken out", did: { past: `took ${name} out`, perfect: "put it back" } };
}
