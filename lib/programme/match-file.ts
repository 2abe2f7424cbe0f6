/** Finds the studio's own rooms, coaches and plans in a month file from elsewhere, and says what it could not find. */
import type { ById, MonthFile, MonthPlan, MonthSlot, PatternLine } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { MonthStudio } from "./month-file.ts";

export interface MatchedFile {
  /** With the studio's ids where something was found by its name. */
  readonly file: MonthFile;
  /** Sentences for the person who brought it. */
  readonly notes: readonly string[];
}

type Studio = Pick<MonthStudio, "rooms" | "coaches" | "plans" | "zone">;

/** By id first; then by name, or a plan by the hash of its edition, where just one has it. */
export function matchMonthFile(file: MonthFile, studio: Studio): MatchedFile {
  const rooms = matched(file.rooms, studio.rooms, byName);
  const coaches = matched(file.coaches, studio.coaches, byName);
  const plans = matched(file.plans, studio.plans, byPlan);
  const renamed: MonthFile = {
    ...file,
    rooms: renamedKeys(file.rooms, rooms.ids),
    coaches: renamedKeys(file.coaches, coaches.ids),
    plans: renamedKeys(file.plans, plans.ids),
    slots: file.slots.map((slot) => withIds(slot, rooms.ids, coaches.ids, plans.ids)),
    ...(file.pattern ? { pattern: file.pattern.map((line) => withIds(line, rooms.ids, coaches.ids, plans.ids)) } : {}),
    ...(file.fill ? { fill: fillWithIds(file.fill, plans.ids) } : {}),
  };
  const strange = [
    ...missing("room", file.rooms, rooms.strangers, ({ name }) => name, usesOf(file, "room")),
    ...missing("coach", file.coaches, coaches.strangers, ({ name }) => name, usesOf(file, "coach")),
    ...missing("plan", file.plans, plans.strangers, ({ title }) => title, usesOf(file, "plan")),
  ];
  return { file: renamed, notes: [...strange, ...notTaken(file, studio)] };
}

function notTaken({ zone, limits, standards, weights }: MonthFile, studio: Studio): string[] {
  const said: string[] = [];
  if (zone !== studio.zone)
    said.push(`The file's times are of ${zone}. They are kept as they are written; this studio is in ${studio.zone}.`);
  if (limits || standards || weights)
    said.push("The file's own limits and standards are not taken: the studio's count.");
  return said;
}

type Ids = ReadonlyMap<string, string>;

function matched<T, S>(
  ours: ById<T>,
  theirs: ById<S>,
  same: (a: T, b: S) => boolean,
): { ids: Ids; strangers: string[] } {
  const ids = new Map<string, string>();
  const strangers: string[] = [];
  for (const [id, one] of Object.entries(ours)) {
    if (own(theirs, id) !== undefined) continue;
    const found = Object.entries(theirs).filter(([, other]) => same(one, other));
    const [to] = found[0] ?? [];
    const taken = to !== undefined && (own(ours, to) !== undefined || [...ids.values()].includes(to));
    if (found.length === 1 && to !== undefined && !taken) ids.set(id, to);
    else strangers.push(id);
  }
  return { ids, strangers };
}

const plain = (name: string): string => name.normalize("NFC").trim().toLowerCase();
const byName = (a: { readonly name: string }, b: { readonly name: string }): boolean => plain(a.name) === plain(b.name);

function byPlan(a: MonthPlan, b: MonthPlan): boolean {
  if (a.known !== false && b.known !== false && a.sha256 !== undefined) return a.sha256 === b.sha256;
  return a.title.trim() !== "" && plain(a.title) === plain(b.title);
}

const renamedKeys = <T>(map: ById<T>, ids: Ids): ById<T> =>
  Object.fromEntries(Object.entries(map).map(([id, value]) => [ids.get(id) ?? id, value]));

function withIds<T extends MonthSlot | PatternLine>(slot: T, rooms: Ids, coaches: Ids, plans: Ids): T {
  const { formerCoaches, formerRooms } = slot as Partial<MonthSlot>;
  const one = (ids: Ids, id: string | null | undefined) => (typeof id === "string" ? (ids.get(id) ?? id) : id);
  return {
    ...slot,
    ...(slot.room === undefined ? {} : { room: one(rooms, slot.room) }),
    ...(slot.coach === undefined ? {} : { coach: one(coaches, slot.coach) }),
    ...(slot.plan === undefined ? {} : { plan: one(plans, slot.plan) }),
    ...(formerCoaches ? { formerCoaches: formerCoaches.map((id) => coaches.get(id) ?? id) } : {}),
    ...(formerRooms ? { formerRooms: formerRooms.map((id) => rooms.get(id) ?? id) } : {}),
  };
}

const fillWithIds = (fill: NonNullable<MonthFile["fill"]>, ids: Ids): MonthFile["fill"] => ({
  ...fill,
  ...(fill.plans ? { plans: fill.plans.map((id) => ids.get(id) ?? id) } : {}),
  ...(fill.wishes ? { wishes: fill.wishes.map((wish) => ({ ...wish, plan: ids.get(wish.plan) ?? wish.plan })) } : {}),
});

function usesOf(file: MonthFile, key: "room" | "coach" | "plan"): ReadonlyMap<string, number> {
  const uses = new Map<string, number>();
  for (const slot of [...file.slots, ...(file.pattern ?? [])]) {
    const id = slot[key];
    if (typeof id === "string") uses.set(id, (uses.get(id) ?? 0) + 1);
  }
  return uses;
}

/** Only of what a class or a line names. */
function missing<T>(
  kind: string,
  map: ById<T>,
  strangers: readonly string[],
  nameOf: (one: T) => string,
  uses: ReadonlyMap<string, number>,
): string[] {
  return strangers.flatMap((id) => {
    const [one, n] = [own(map, id), uses.get(id)];
    if (one === undefined || n === undefined) return [];
    const name = nameOf(one).trim() === "" ? id : nameOf(one).trim();
    return [
      `This studio has no ${kind} “${name}”, which ${plural(n, "class or line names", "classes or lines name")}. It is kept with the month.`,
    ];
  });
}
