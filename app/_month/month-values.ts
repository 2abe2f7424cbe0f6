/** The plain values of a month in words, for what an undo did and for what somebody else set over one's own. */
import type * as Y from "yjs";
import type { ValueAt, ValuePlaces, ValueWords } from "#lib/client/doc-session/description.ts";
import { dayWords, timeWords } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { DOT, monthParts } from "#lib/programme/layout.ts";
import { readDeletedSlots, readMonthState, readSlotById } from "#lib/programme/read.ts";
import type { MonthSessionProps } from "./month-types.ts";
import { NOT_SHOWN, slotName } from "./month-words.ts";

/** A single class is an entry; what differs in a class of the pattern stands in one flat map, by `CLASS.KEY`. */
export const monthValues = (doc: Y.Doc): ValuePlaces => {
  const { slots, changed } = monthParts(doc);
  return { root: changed, texts: {}, entries: slots };
};

/** The studio's rooms and coaches as they are known now. */
interface Named extends Pick<MonthSessionProps, "plans"> {
  readonly formats: Formats;
  readonly studio: Pick<MonthFile, "rooms" | "coaches">;
}
const named = (list: Readonly<Record<string, { readonly name: string }>>, id: unknown): string =>
  typeof id === "string" ? (own(list, id)?.name ?? NOT_SHOWN) : "nobody";

const FIELDS: Readonly<
  Record<string, readonly [name: string, says: (value: unknown, of: Named, doc: Y.Doc) => string]>
> = {
  date: ["the day", (value, { formats }) => (typeof value === "string" ? dayWords(value, formats) : "the pattern's")],
  time: [
    "the beginning",
    (value, { formats }) => (value === undefined ? "the pattern's" : timeWords(String(value), formats)),
  ],
  minutes: ["the length", (value) => (value === undefined ? "the pattern's" : `${value} min`)],
  people: ["the people", (value) => (value === undefined || value === null ? "not said" : String(value))],
  locked: ["the lock", (value) => (value === true ? "on" : "off")],
  themeId: ["the theme", (value, _, doc) => named(readMonthState(doc).themes, value).replace(/^nobody$/, "none")],
  coachId: ["the coach", (value, { studio }) => named(studio.coaches, value)],
  roomId: ["the room", (value, { studio }) => named(studio.rooms, value).replace(/^nobody$/, "none")],
  planId: ["the plan", (value, { plans }) => planName(plans, value)],
};

export function monthValueWords(at: ValueAt, doc: Y.Doc, of: Named): ValueWords | undefined {
  const [id, key] = at.id === "" ? splitKey(at.key) : [at.id, at.key];
  const living = readSlotById(doc, id);
  const slot = living ?? readDeletedSlots(doc).find((gone) => gone.slot.id === id)?.slot;
  if (!slot) return undefined;
  if (key === "deleted" || key === "out") return takenOutWords(slotName(slot, of.formats), at.value);
  const field = own(FIELDS, key);
  return field && living && { name: `${field[0]} of ${slotName(slot, of.formats)}`, says: field[1](at.value, of, doc) };
}

function splitKey(key: string): [string, string] {
  const dot = key.indexOf(DOT);
  return [key.slice(0, dot), key.slice(dot + 1)];
}

function planName(plans: MonthSessionProps["plans"], id: unknown): string {
  if (typeof id !== "string") return "none";
  const plan = plans.find((one) => one.id === id);
  return plan ? planTitle(plan.title) : NOT_SHOWN;
}

function takenOutWords(name: string, value: unknown): ValueWords {
  if (value === undefined || value === false)
    return { name, says: "in the month", did: { past: `put ${name} back`, perfect: "taken it out" } };
  return { name, says: "taken out", did: { past: `took ${name} out`, perfect: "put it back" } };
}
