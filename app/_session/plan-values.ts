/** The plain values of a plan in words, for what an undo did and for what somebody else set over one's own. */
import type * as Y from "yjs";
import type { ValueAt, ValuePlaces, ValueWords } from "#lib/client/doc-session/description.ts";
import { type ItemMap, LOCKED_SECONDS, planParts, SPRING_KEY, UNDONE_CREATION } from "#lib/doc/layout.ts";
import { othersWroteIn } from "#lib/doc/other-writers.ts";
import { orderedItems, readItemById } from "#lib/doc/read.ts";
import { takenOut } from "#lib/doc/taken-out.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { usualPlaceWords } from "#lib/load/load-words.ts";
import { plainNumber, secondsWords, sideWords, springLabel } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { ItemSide, Plan, PlanItem } from "#lib/plan/schema.ts";
import { nameOf, TAKEN_OUT_LIST } from "./item-words.ts";

export function planValues(doc: Y.Doc): ValuePlaces {
  const { head, title, theme, notes, items } = planParts(doc);
  return {
    root: head,
    texts: { title, theme, notes },
    entries: items,
    countsAt: (at) => countsAt(items.get(at.id), at.key),
  };
}

/** A locked item keeps the time it was locked at, even if somebody set another one without knowing of the lock. */
const countsAt = (map: ItemMap | undefined, key: string): string =>
  (key === "seconds" || key === "locked") && map?.get("locked") === true && map.has(LOCKED_SECONDS)
    ? LOCKED_SECONDS
    : key;

export function planValueWords(at: ValueAt, doc: Y.Doc, plan: Plan, f: Formats): ValueWords | undefined {
  return at.id === "" ? headWords(at) : itemWords(at, doc, plan, f);
}

const seconds = (value: unknown): string => (typeof value === "number" ? secondsWords(value) : "the usual");
const words = (value: unknown): string => (value === undefined || value === "" ? "nothing" : `“${String(value)}”`);
const plain = (value: unknown): string => (value === undefined ? "the usual" : String(value));

const HEAD_WORDS: Readonly<Record<string, readonly [name: string, says: (value: unknown) => string]>> = {
  title: ["the title", words],
  theme: ["the theme", words],
  notes: ["the notes", words],
  lengthSeconds: ["the length", seconds],
  level: ["the level", plain],
  openingSeconds: ["the opening", seconds],
  closingSeconds: ["the closing", seconds],
  headsUpSeconds: ["the heads-up", seconds],
  countInSeconds: ["the count-in", seconds],
  gridSeconds: ["the time step", seconds],
  people: ["how many change at once", plain],
};

function headWords({ key, value }: ValueAt): ValueWords | undefined {
  const found = own(HEAD_WORDS, key);
  return found && { name: found[0], says: found[1](value) };
}

function itemWords({ id, key, value }: ValueAt, doc: Y.Doc, plan: Plan, f: Formats): ValueWords | undefined {
  const known = readItemById(doc, id) ?? takenOut(doc, id)?.item;
  const item = known ? nameOf(plan, known) : "An item";
  if (key === "deleted") return takenOutWords(item, value, planParts(doc).items.get(id));
  if (!known) return undefined;
  if (key.startsWith(SPRING_KEY)) {
    const label = springLabel(plan.equipment, key.slice(SPRING_KEY.length));
    return { name: `the ${label} springs of ${item}`, says: typeof value === "number" ? plainNumber(value) : "none" };
  }
  switch (key) {
    case "seconds":
      return {
        name: item,
        says: seconds(known.kind === "heading" ? value : known.seconds),
        ...held(known, value, item),
      };
    case "side":
      return { name: `the side of ${item}`, says: sideWords(value as ItemSide) ?? plain(value) };
    case "move":
      return { name: "the move here", says: item };
    case "order":
      return { name: `the place of ${item}`, says: placeOf(doc, id) };
    case "label":
      return { name: known.kind === "heading" ? "the heading" : "the words of the pause", says: words(value) };
    case "locked":
      return { name: `the time of ${item}`, ...lockWords(known, value, item) };
    case "facing":
      return { name: `the facing of ${item}`, says: value === undefined ? "the move's own" : plain(value) };
    case "offsetMm":
      return { name: `the starting place of ${item}`, says: usualPlaceWords(Number(value ?? 0), f) };
    case "transitionSeconds":
      return { name: `the change before ${item}`, says: value === undefined ? "not planned" : seconds(value) };
    default:
      return undefined;
  }
}

/** Seconds that were set on a locked item do not count: who locked it is named instead. */
function held(known: PlanItem, value: unknown, item: string): Pick<ValueWords, "did"> {
  if (known.kind !== "move" || !known.locked || value === known.seconds) return {};
  return { did: { past: `locked ${item} at ${seconds(known.seconds)}`, perfect: seconds(value) } };
}

function lockWords(known: PlanItem, value: unknown, item: string): Pick<ValueWords, "says" | "did"> {
  if (value !== true) return { says: "not locked", did: { past: `unlocked ${item}`, perfect: "unlocked it" } };
  const at = known.kind === "move" ? ` at ${seconds(known.seconds)}` : "";
  return { says: `locked${at}`, did: { past: `locked ${item}${at}`, perfect: `locked it${at}` } };
}

/** `TAKEN_BACK`: adding it was undone. Such an item can be put back only if others had written in it. */
function takenOutWords(item: string, value: unknown, map: ItemMap | undefined): ValueWords {
  if (value === undefined)
    return { name: item, says: "in the plan", did: { past: `put ${item} back`, perfect: "taken it out" } };
  const withOthers = value === UNDONE_CREATION && map !== undefined && othersWroteIn(map);
  const undone = withOthers
    ? `no longer added; what others wrote in it is kept under “${TAKEN_OUT_LIST}”`
    : "no longer added";
  const says = value === UNDONE_CREATION ? undone : "taken out";
  return { name: item, says, did: { past: `took ${item} out`, perfect: "put it back" } };
}

function placeOf(doc: Y.Doc, id: string): string {
  const ids = orderedItems(doc).map((item) => item.id);
  return `${ids.indexOf(id) + 1} of ${ids.length}`;
}
