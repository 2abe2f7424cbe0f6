/** Changes of a month's classes in words: a sentence for each, and the short marks that stand beside a class. */
import { own } from "#lib/plan/lookup.ts";
import { dateWords } from "../define/words.ts";
import type { ById, MonthFile, MonthSlot } from "../types.ts";
import type { ChangedPart, ChangedSlot } from "./slot-changes.ts";

type Named = Pick<MonthFile, "rooms" | "coaches" | "plans" | "themes" | "regulars">;

/** The months that names are looked up in; who is gone now is named as then. */
export interface ChangedMonths {
  readonly was: Named;
  readonly now: Named;
}

/** "Tue 3 Mar 18:00" */
export const timeOf = ({ date, start }: MonthSlot): string => `${dateWords(date)} ${start}`;
const KIND_SAID = { new: "New: ", "called-off": "Called off: ", "on-again": "On again: ", changed: "" } as const;

/** "Tue 3 Mar 18:00, Loft: moved from Mon 2 Mar 18:00; coach Jonas, was Marta." */
export function changeSentence(change: ChangedSlot, months: ChangedMonths): string {
  const { kind, was, now, parts } = change;
  const slot = kind === "called-off" ? (was ?? now) : (now ?? was);
  if (!slot) return "";
  const room = nameOf("room", slot, months);
  const place = [timeOf(slot), room === NONE.room ? undefined : room].filter(Boolean).join(", ");
  const said = partsSaid(change, parts, months);
  return `${KIND_SAID[kind]}${place}${said.length > 0 ? `: ${said.join("; ")}` : ""}.`;
}

const partsSaid = ({ kind, was, now }: ChangedSlot, parts: readonly ChangedPart[], months: ChangedMonths): string[] =>
  kind === "called-off" || !was || !now ? [] : parts.map((part) => partWords(part, { was, now }, months));

/** What whoever leads the class has to know of the change; not its note, its number of people or that its plan is locked. */
const TELLING: ReadonlySet<ChangedPart> = new Set(["moved", "minutes", "room", "coach", "plan", "theme", "regulars"]);

/**
 * The same where the class is named already: "Since edition 1 was signed: moved from Mon 2 Mar 18:00." `since`: "edition 1 was
 * signed". Null when only small things changed.
 */
export function changeSince(change: ChangedSlot, months: ChangedMonths, since: string): string | null {
  if (change.kind === "called-off") return `Called off since ${since}.`;
  if (change.kind === "new") return `New since ${since}.`;
  const said = partsSaid(
    change,
    change.parts.filter((part) => TELLING.has(part)),
    months,
  );
  if (change.kind === "on-again") return [`On again since ${since}`, ...said].join("; ").concat(".");
  return said.length === 0 ? null : `Since ${since}: ${said.join("; ")}.`;
}

interface Both {
  readonly was: MonthSlot;
  readonly now: MonthSlot;
}

const PART_NAMES = { room: "room", coach: "coach", plan: "plan", theme: "theme" } as const;
const NONE = { room: "no room", coach: "no coach", plan: "no plan", theme: "no theme" } as const;

function partWords(part: ChangedPart, { was, now }: Both, months: ChangedMonths): string {
  if (part === "moved") return `moved from ${timeOf(was)}`;
  if (part === "minutes") return `${now.minutes} min, was ${was.minutes}`;
  if (part === "regulars") return `regulars ${groups(now, months)}, was ${groups(was, months)}`;
  if (part === "people") return `people ${now.people ?? "not said"}, was ${was.people ?? "not said"}`;
  if (part === "note") return "another note";
  if (part === "locked") return now.locked ? "its plan is locked now" : "its plan is not locked any more";
  const [is, before] = [nameOf(part, now, months), nameOf(part, was, months)];
  return `${is === NONE[part] ? "" : `${PART_NAMES[part]} `}${is}, was ${before}`;
}

function nameOf(part: keyof typeof PART_NAMES, slot: MonthSlot, { was, now }: ChangedMonths): string {
  const id = slot[part];
  if (typeof id !== "string") return NONE[part];
  if (part === "plan") {
    const title = [now, was].map(({ plans }) => own(plans, id)?.title).find((found) => found);
    return title === undefined ? "one that is not known" : `“${title}”`;
  }
  const found = [now, was].map((month) => namedIn(month, part).get(id)?.name).find((name) => name !== undefined);
  return found ?? "one that is gone";
}

const namedIn = ({ rooms, coaches, themes = {} }: Named, part: "room" | "coach" | "theme") => {
  const named: ById<{ readonly name: string }> = { room: rooms, coach: coaches, theme: themes }[part];
  return new Map(Object.entries(named));
};

function groups({ regulars = [] }: MonthSlot, { was, now }: ChangedMonths): string {
  const names = regulars.map(
    (id) => own(now.regulars, id)?.name ?? own(was.regulars, id)?.name ?? "some that are gone",
  );
  return names.length === 0 ? "none" : names.join(" and ");
}

const SHORT: Readonly<Partial<Record<ChangedPart, string>>> = {
  room: "other room",
  coach: "other coach",
  plan: "other plan",
  theme: "other theme",
  regulars: "other regulars",
};

/** What stands beside a class: "moved from 18:00", "other plan", "60 min, was 45". Small things have none. */
export function changeMarks({ kind, parts, was, now }: ChangedSlot): string[] {
  if (kind === "new") return ["new"];
  if (kind === "called-off") return ["called off"];
  const again = kind === "on-again" ? ["on again"] : [];
  if (!was || !now) return again;
  const marks = parts.flatMap((part) => {
    if (part === "moved") return `moved from ${was.date === now.date ? was.start : timeOf(was)}`;
    return part === "minutes" ? `${now.minutes} min, was ${was.minutes}` : (SHORT[part] ?? []);
  });
  return [...again, ...marks];
}
