/** The names that a table may use for what the month and its studio have. */
import type { ById, MonthFile } from "#lib/month/types.ts";

type NamedColumn = "room" | "coach" | "theme" | "plan" | "regulars";

/** Ids by names in small letters; a name that two have is not in it. */
export interface NamesKnown extends Readonly<Record<NamedColumn, ReadonlyMap<string, string>>> {
  /** Of a coach's name or first name that several have, all of them in full. */
  readonly several: ReadonlyMap<string, readonly string[]>;
}

export const nameKey = (name: string): string => name.normalize("NFC").trim().toLowerCase();

export function namesIn({ rooms, coaches, themes, plans, regulars }: MonthFile): NamesKnown {
  const names = (map: ById<{ readonly name: string }> | undefined) =>
    unique(Object.entries(map ?? {}).map(([id, { name }]) => [nameKey(name), id]));
  return {
    room: names(rooms),
    ...coachNames(coaches),
    theme: names(themes),
    regulars: names(regulars),
    plan: unique(Object.entries(plans).map(([id, { title }]) => [nameKey(title), id])),
  };
}

/** In full first: who is called "Marta" alone is meant by it, whoever else has it as a first name. */
function coachNames(coaches: MonthFile["coaches"]): Pick<NamesKnown, "coach" | "several"> {
  const all = Object.entries(coaches).map(([id, { name }]) => ({ id, name: name.trim() }));
  const full = all.map(({ id, name }) => [nameKey(name), id] as const);
  const taken = new Set(full.map(([key]) => key));
  const first = all
    .map(({ id, name }) => [nameKey(name.split(/\s+/)[0] ?? ""), id] as const)
    .filter(([key]) => !taken.has(key));
  const called = new Map<string, string[]>();
  for (const [key, id] of [...full, ...first])
    called.set(key, [...(called.get(key) ?? []), all.find((one) => one.id === id)?.name ?? ""]);
  return {
    coach: unique([...full, ...first]),
    several: new Map([...called].filter(([key, names]) => key !== "" && names.length > 1)),
  };
}

function unique(entries: readonly (readonly [key: string, id: string])[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const twice = new Set<string>();
  for (const [key, id] of entries) {
    if (found.has(key)) twice.add(key);
    found.set(key, id);
  }
  for (const key of ["", ...twice]) found.delete(key);
  return found;
}
