/** Changes to everything but the items: the head, the equipment, the studio standards, the library's moves. */
import { percent } from "#lib/formats/percent.ts";
import { distanceRange, distanceWords, forceRange, forceWords, stiffnessWords } from "#lib/formats/units.ts";
import { tagWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Equipment, Move, Plan, Spring } from "#lib/plan/schema.ts";
import {
  became,
  type DiffUnits,
  type FieldWords,
  keysOfBoth,
  sayData,
  sayList,
  sayMeasure,
  sayNumber,
  saySeconds,
  sayTag,
  sayText,
  type ValueSayer,
} from "./field-words.ts";

const DEFAULT = "the default";
type HeadKey = Exclude<keyof Plan, "equipment" | "standards" | "moves" | "items" | "theme" | "speech">;

const HEAD: Readonly<Record<HeadKey, FieldWords>> = {
  format: { label: "The format", say: sayText },
  title: { label: "The title", say: sayText },
  lengthSeconds: { label: "The length of the class", say: saySeconds },
  level: { label: "The level", say: sayTag, absent: "not set" },
  expected: { label: "Who is expected", say: sayList, absent: "not set" },
  openingSeconds: { label: "The opening", say: saySeconds, absent: DEFAULT },
  closingSeconds: { label: "The closing", say: saySeconds, absent: DEFAULT },
  headsUpSeconds: { label: "The heads-up", say: saySeconds, absent: DEFAULT },
  countInSeconds: { label: "The count-in", say: saySeconds, absent: DEFAULT },
  gridSeconds: { label: "The grid of seconds", say: saySeconds, absent: DEFAULT },
  people: { label: "How many change at once", say: sayNumber, absent: "one" },
  notes: { label: "The notes", say: sayText, absent: "none" },
};

export function headChanges(before: Plan, after: Plan): string[] {
  const fields = keysOf(HEAD).flatMap((key) => became(HEAD[key].label, before[key], after[key], HEAD[key]));
  return [...fields, ...themeChanges(before.theme, after.theme), ...speechChanges(before.speech, after.speech)];
}

function themeChanges(before: Plan["theme"], after: Plan["theme"]): string[] {
  if (sameData(before, after)) return [];
  const name = became("The theme", before?.name, after?.name, { say: sayText, absent: "none" });
  const shares = keysOfBoth(before?.shares, after?.shares).flatMap((group) =>
    became(`The theme's share of ${tagWords(group)}`, own(before?.shares, group), own(after?.shares, group), {
      say: sayShare,
      absent: "none",
    }),
  );
  return orAtLeast([...name, ...shares], "The theme is written differently.");
}

function speechChanges(before: Plan["speech"], after: Plan["speech"]): string[] {
  if (sameData(before, after)) return [];
  const fields = [
    ...became("Syllables a second", before?.syllablesPerSecond, after?.syllablesPerSecond, {
      say: sayNumber,
      absent: DEFAULT,
    }),
    ...became("The pause after a line", before?.pauseSeconds, after?.pauseSeconds, {
      say: saySeconds,
      absent: DEFAULT,
    }),
  ];
  return orAtLeast(fields, "The rate of speech is written differently.");
}

export function equipmentChanges(before: Equipment, after: Equipment, f: DiffUnits): string[] {
  if (sameData(before, after)) return [];
  const actions = keysOfBoth(before.actionSeconds, after.actionSeconds).flatMap((action) =>
    became(`The time for ${actionWords(action)}`, own(before.actionSeconds, action), own(after.actionSeconds, action), {
      say: saySeconds,
      absent: "the usual",
    }),
  );
  const changes = [
    ...became("The room's machine", before.name, after.name, { say: sayText }),
    ...became("The carriage's travel", before.carriageTravelMm, after.carriageTravelMm, {
      say: sayMeasure((mm) => distanceWords(mm, f, true)),
    }),
    ...springChanges(before.springs, after.springs, f),
    ...actions,
    ...became("How much people differ in a change", before.spreadShare, after.spreadShare, {
      say: sayShare,
      absent: "the usual",
    }),
  ];
  return orAtLeast(changes, "The equipment is written differently.");
}

function springChanges(before: readonly Spring[], after: readonly Spring[], f: DiffUnits): string[] {
  const fields = springFields(f);
  const ids = [...new Set([...before, ...after].map((s) => s.id))];
  const changes = ids.flatMap((id) => {
    const [was, is] = [before.find((s) => s.id === id), after.find((s) => s.id === id)];
    if (!was) return [`The spring ${is?.label ?? id} was added to the room.`];
    if (!is) return [`The spring ${was.label} was taken out of the room.`];
    return keysOfBoth(was, is).flatMap((key) => {
      const { label, say } = fields[key] ?? { label: key, say: sayData };
      return became(`The spring ${was.label}, ${label}`, read(was, key), read(is, key), { say });
    });
  });
  const order = changes.length === 0 && !sameData(before, after) ? ["The order of the springs changed."] : [];
  return [...changes, ...order];
}

const springFields = (f: DiffUnits): Readonly<Record<string, FieldWords>> => ({
  label: { label: "name", say: sayData },
  count: { label: "how many there are", say: sayData },
  stiffnessNPerMm: { label: "stiffness", say: sayMeasure((n) => stiffnessWords(n, f)) },
  preloadN: { label: "preload", say: sayMeasure((n) => forceWords(n, f, true)) },
});

/** The library entries in a plan. */
export function libraryChanges(before: Plan["moves"], after: Plan["moves"], f: DiffUnits): string[] {
  return keysOfBoth(before, after).flatMap((id) => {
    const [was, is] = [own(before, id), own(after, id)];
    if (!was) return [`The move ${quoteName(is, id)} was added to the plan.`];
    if (!is) return [`The move ${quoteName(was, id)} was taken out of the plan.`];
    return keysOfBoth(was, is).flatMap((key) =>
      became(`The move ${quoteName(was, id)}, ${fieldName(key)}`, read(was, key), read(is, key), {
        say: sayMoveField(key, f),
        absent: "not set",
      }),
    );
  });
}

const quoteName = (move: Move | undefined, id: string): string => move?.name ?? id;
const fieldName = (key: string): string =>
  key
    .replace(/(Mm|N)$/, "")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase();
const actionWords = (key: string): string => key.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase();
const sayMoveField =
  (key: string, f: DiffUnits): ValueSayer =>
  (v) => {
    if (key === "loadN" && isRange(v)) return forceRange(v, f);
    if (key === "travelMm" && isRange(v)) return distanceRange(v, f);
    return typeof v === "string" ? v : Array.isArray(v) ? sayList(v) : sayData(v);
  };
const isRange = (v: unknown): v is [number, number] =>
  Array.isArray(v) && v.length === 2 && v.every((end) => typeof end === "number");
const sayShare: ValueSayer = (v) => (typeof v === "number" ? percent(v) : sayData(v));

const read = (value: object, key: string): unknown => own(value as Record<string, unknown>, key);
const keysOf = <K extends string>(record: Readonly<Record<K, unknown>>): K[] => Object.keys(record) as K[];
const orAtLeast = (changes: string[], otherwise: string): string[] => (changes.length > 0 ? changes : [otherwise]);
