/**
 * What is wrong with a move, by place, each in one sentence for a person. The schema of the plan file decides; its
 * bounds are only put into words here, so that form, server and file never differ. Checks that the schema cannot
 * express are below.
 */
import * as z from "zod/mini";
import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { distanceWords, forceWords } from "#lib/formats/units.ts";
import { expectedWords, schemaAt } from "#lib/plan/expected.ts";
import type { JsonSchema } from "#lib/plan/json-schema.ts";
import { type Move, moveSchema } from "#lib/plan/schema.ts";

/** The path of keys to a value, e.g. `tempo.outSeconds`, `springs.min.light`, `loadN.0`, `name`. */
export type MoveFieldPath = string;

export interface Fault {
  readonly place: MoveFieldPath;
  readonly say: string;
}

type FaultUnits = Pick<Formats, "force" | "length">;

export type ReadMove =
  | { readonly ok: true; readonly move: Move }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Checks any value as a move of the library. Returns all faults, one for each place, in the order of the schema. Never
 * throws. `units`: those that loads and travels were typed in.
 */
export function readMove(value: unknown, units: FaultUnits = STANDARD_FORMATS): ReadMove {
  const parsed = moveSchema.safeParse(value);
  if (!parsed.success)
    return { ok: false, faults: onePerPlace(issuesOf(parsed.error, value).map((i) => fault(i, value, units))) };
  const faults = onePerPlace(unsaid(parsed.data));
  return faults.length === 0 ? { ok: true, move: parsed.data } : { ok: false, faults };
}

/** What to choose or write where a value is missing. */
const MISSING: Readonly<Record<MoveFieldPath, string>> = {
  name: "Give the move a name.",
  station: "Choose where on the machine it is done.",
  position: "Choose the position of the body.",
  facing: "Choose which way the person faces.",
  hands: "Choose where the hands are.",
  feet: "Choose where the feet are.",
  sides: "Choose whether it is done on both sides at once.",
  pattern: "Choose the pattern of the movement.",
  resistance: "Choose what the person works against.",
  tempo: "Choose a hold, or give the seconds out and back.",
  "tempo.outSeconds": "Give the seconds out.",
  "tempo.backSeconds": "Give the seconds back.",
};
const RANGES = new Set(["loadN", "travelMm", "seconds"]);
const UPWARDS: Readonly<Record<MoveFieldPath, string>> = {
  seconds: "The shortest time must not be longer than the longest.",
  loadN: "The least load must not be above the most.",
  travelMm: "The travel must not end before it begins.",
};
const UNITS: Readonly<Record<string, string>> = { seconds: " seconds", tempo: " seconds" };
/** Of a figure's correction, whose lengths people type in their own unit. */
const CORRECTION_BOUNDS = {
  Deg: "Give a number from -90 to 90.",
  Mm: "Give a number from -500 to 500 mm (-19.6 to 19.6 in).",
};

let made: JsonSchema | undefined;
const schema = (): JsonSchema => {
  made ??= z.toJSONSchema(moveSchema, { target: "draft-2020-12", io: "input" });
  return made;
};

type Path = readonly (string | number)[];
interface Issue {
  readonly path: Path;
  readonly issue: z.core.$ZodIssue;
}

/**
 * A tempo that fits neither form is split up, so that the faults of the form that was begun appear at its own fields.
 */
function issuesOf(error: z.core.$ZodError, move: unknown): Issue[] {
  return error.issues.flatMap((issue): Issue[] => {
    const path = issue.path.map(step);
    const given = valueAt(move, path);
    if (issue.code !== "invalid_union" || !isObject(given)) return [{ path, issue }];
    const inner = issue.errors["holdSeconds" in given ? 1 : 0] ?? [];
    return inner.map((part) => ({ path: [...path, ...part.path.map(step)], issue: part }));
  });
}

function fault({ path, issue }: Issue, move: unknown, units: FaultUnits): Fault {
  const [top = ""] = path;
  const place = path.join(".");
  if (issue.code === "unrecognized_keys") {
    return { place, say: `A move has no such field: ${issue.keys.map((key) => key.slice(0, 60)).join(", ")}.` };
  }
  const given = valueAt(move, path);
  if (given === undefined || given === "") return { place, say: MISSING[place] ?? missing(path) };
  if (issue.code === "custom")
    return { place, say: UPWARDS[place] ?? "This value is not allowed here. Choose or type another." };
  if (top === "figure" && path.length === 3)
    return { place, say: CORRECTION_BOUNDS[place.endsWith("Mm") ? "Mm" : "Deg"] };
  const node = schemaAt(schema(), path, move);
  const most = path.length === 2 && node ? mostIn(top, node, units) : null;
  if (most !== null) return { place, say: `Give a number from 0 to ${most}.` };
  const expected = node ? expectedWords(node) : "something else";
  const unit = path.length > 1 && / number /.test(expected) ? (UNITS[top] ?? "") : "";
  return { place, say: `Give ${expected}${unit}.` };
}

/** The upper bound of a load or a travel, as it is typed; null for others. */
function mostIn(top: string | number, { maximum }: JsonSchema, units: FaultUnits): string | null {
  if (typeof maximum !== "number") return null;
  if (top === "loadN") return forceWords(maximum, units, true);
  return top === "travelMm" ? distanceWords(maximum, units, true) : null;
}

function missing(path: Path): string {
  const [top = "", part] = path;
  if (RANGES.has(String(top)))
    return part === 0 ? "Give the start of the range too." : "Give the end of the range too.";
  return top === "easier" || top === "harder" ? "Describe it, or remove this line." : "Fill this in.";
}

/** Faults that the schema allows but a library should not hold. */
function unsaid(move: Move): Fault[] {
  const faults: Fault[] = [];
  if (move.name.trim() === "") faults.push({ place: "name", say: "Give the move a name." });
  const { min = {}, max = {} } = move.springs ?? {};
  for (const [id, least] of Object.entries(min)) {
    const most = Object.hasOwn(max, id) ? max[id] : undefined;
    if (most !== undefined && least > most) {
      faults.push({ place: `springs.max.${id}`, say: `The most must not be below the least, which is ${least}.` });
    }
  }
  for (const key of ["easier", "harder"] as const) {
    for (const [i, way] of (move[key] ?? []).entries()) {
      if (way.trim() === "") faults.push({ place: `${key}.${i}`, say: "Describe it, or remove this line." });
    }
  }
  return faults;
}

function valueAt(value: unknown, path: Path): unknown {
  let at: unknown = value;
  for (const step of path) {
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, step)) return undefined;
    at = Reflect.get(at, step);
  }
  return at;
}

/** The first fault of each place; a fault of a whole is dropped where one of its parts has a fault. */
function onePerPlace(faults: readonly Fault[]): Fault[] {
  return faults.filter(
    (fault, i) =>
      faults.findIndex((other) => other.place === fault.place) === i &&
      !faults.some((other) => other.place.startsWith(`${fault.place}.`)),
  );
}

const step = (part: PropertyKey): string | number => (typeof part === "number" ? part : String(part));
const isObject = (value: unknown): value is object => typeof value === "object" && value !== null;
