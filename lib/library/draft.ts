/**
 * A move as it is being typed: every number still text, every choice perhaps not made. A draft keeps whatever was
 * typed, right or wrong; reading it gives the move, or the fault of each field. `readDraft(draftOf(move), move)` equals
 * `move`.
 */

import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { smallNumber, smallUnit, toMm, toNewtons, typedForce, typedLength } from "#lib/formats/units.ts";
import type { PhaseCorrection } from "#lib/plan/figure-correction.ts";
import { own } from "#lib/plan/lookup.ts";
import {
  GROUPS,
  type Group,
  type Move,
  type MoveCaution,
  moveSchema,
  type POSES,
  RESISTANCES,
  type SpineDirection,
} from "#lib/plan/schema.ts";
import { CORRECTION_KEYS, type CorrectionKey, isLength, PHASES, type Phase } from "./correction-words.ts";
import { type ReadMove, readMove } from "./faults.ts";

const CHOICE_KEYS = [
  "station",
  "position",
  "facing",
  "hands",
  "feet",
  "sides",
  "pattern",
  "resistance",
] as const satisfies readonly (keyof Move)[];
export type ChoiceKey = (typeof CHOICE_KEYS)[number];
type Choices = { readonly [K in ChoiceKey]: Move[K] | "" };

export const TEMPO_KEYS = ["outSeconds", "outHoldSeconds", "backSeconds", "backHoldSeconds"] as const;
export type TempoKey = (typeof TEMPO_KEYS)[number];

export interface SpringLimitDraft {
  readonly min: string;
  readonly max: string;
}

/** From and to, as typed. */
type RangeDraft = readonly [string, string];

/** In the reader's units. */
export const emptyDraft = ({ force, length }: DraftUnits): MoveDraft => ({ ...EMPTY_DRAFT, units: { force, length } });

export type DraftUnits = Pick<Formats, "force" | "length">;

export interface MoveDraft extends Choices {
  readonly name: string;
  /** Weight by group; an empty one is not trained. */
  readonly muscles: Readonly<Partial<Record<Group, string>>>;
  readonly spine: readonly SpineDirection[];
  readonly loadN: RangeDraft;
  readonly springs: Readonly<Record<string, SpringLimitDraft>>;
  /** Centimetres, as on a tape measure along the rail. The move itself holds millimetres. */
  readonly travel: RangeDraft;
  /** In which load and travel are typed: a draft that is kept in a browser outlives a change of its person's units. */
  readonly units: DraftUnits;
  readonly tempo: "" | "moving" | "held";
  readonly times: Readonly<Record<TempoKey, string>>;
  readonly exhaleOn: "" | "out" | "back";
  readonly met: string;
  readonly cautions: readonly MoveCaution[];
  readonly easier: readonly string[];
  readonly harder: readonly string[];
  readonly seconds: RangeDraft;
  readonly pose: "" | (typeof POSES)[number];
  readonly figure: FigureDraft;
}

/** By phase and value; lengths in millimetres or inches. */
export type FigureDraft = Readonly<Record<Phase, Readonly<Partial<Record<CorrectionKey, string>>>>>;

export const NO_CORRECTION: FigureDraft = { start: {}, end: {} };

const NO_RANGE: RangeDraft = ["", ""];
const NO_TIMES = { outSeconds: "", outHoldSeconds: "", backSeconds: "", backHoldSeconds: "" };

/** A new move. Nothing is chosen in advance, except that it works against springs, which the machine is for. */
export const EMPTY_DRAFT: MoveDraft = {
  name: "",
  station: "",
  position: "",
  facing: "",
  hands: "",
  feet: "",
  sides: "",
  pattern: "",
  resistance: RESISTANCES[0],
  muscles: {},
  spine: [],
  loadN: NO_RANGE,
  springs: {},
  travel: NO_RANGE,
  units: STANDARD_FORMATS,
  tempo: "moving",
  times: NO_TIMES,
  exhaleOn: "",
  met: "",
  cautions: [],
  easier: [],
  harder: [],
  seconds: NO_RANGE,
  pose: "",
  figure: NO_CORRECTION,
};

export function moveDraft(move: Move, { force, length }: DraftUnits): MoveDraft {
  const units = { force, length };
  const held = "holdSeconds" in move.tempo;
  const tempo: Partial<Record<TempoKey, number>> = "holdSeconds" in move.tempo ? {} : move.tempo;
  const ids = [...Object.keys(move.springs?.min ?? {}), ...Object.keys(move.springs?.max ?? {})];
  const spring = (id: string) => ({ min: text(own(move.springs?.min, id)), max: text(own(move.springs?.max, id)) });
  return {
    name: move.name,
    station: move.station,
    position: move.position,
    facing: move.facing,
    hands: move.hands,
    feet: move.feet,
    sides: move.sides,
    pattern: move.pattern,
    resistance: move.resistance,
    muscles: Object.fromEntries(Object.entries(move.muscles).map(([group, weight]) => [group, text(weight)])),
    spine: move.spine ?? [],
    loadN: loadRange(move.loadN, units),
    springs: Object.fromEntries(ids.map((id) => [id, spring(id)])),
    travel: travelRange(move.travelMm, units),
    units,
    tempo: held ? "held" : "moving",
    times: {
      outSeconds: text(tempo.outSeconds),
      outHoldSeconds: text(tempo.outHoldSeconds),
      backSeconds: text(tempo.backSeconds),
      backHoldSeconds: text(tempo.backHoldSeconds),
    },
    exhaleOn: move.exhaleOn ?? "",
    met: text(move.met),
    cautions: move.cautions ?? [],
    easier: move.easier ?? [],
    harder: move.harder ?? [],
    seconds: range(move.seconds),
    pose: move.handsShare?.pose ?? "",
    figure: figureDraft(move.figure, units),
  };
}

/**
 * `base`: the move that the draft began from; where a value is empty, its own form of that (no list, or an empty one)
 * is kept.
 */
export function readMoveDraft(draft: MoveDraft, base: Move | null): ReadMove {
  return readMove(candidateOf(draft, base), draft.units);
}

/** The tempo and times, whatever the other fields hold; null while the tempo itself cannot be read. */
export function readMoveTimes(draft: MoveDraft): Pick<Move, "tempo" | "seconds"> | null {
  const read = moveSchema.shape.tempo.safeParse(tempo(draft));
  if (!read.success) return null;
  const { data: seconds } = moveSchema.shape.seconds.safeParse(pair(draft.seconds));
  return seconds === undefined ? { tempo: read.data } : { tempo: read.data, seconds };
}

function candidateOf(draft: MoveDraft, base: Move | null): unknown {
  return filled({
    name: draft.name === base?.name ? draft.name : draft.name.trim(),
    ...Object.fromEntries(CHOICE_KEYS.map((key) => [key, draft[key] || undefined])),
    muscles: filled(Object.fromEntries(GROUPS.map((group) => [group, number(draft.muscles[group] ?? "")]))),
    spine: list(draft.spine, base?.spine),
    loadN: load(draft, base?.loadN),
    springs: springs(draft.springs, base?.springs),
    travelMm: travel(draft, base?.travelMm),
    tempo: tempo(draft),
    exhaleOn: draft.exhaleOn || undefined,
    met: number(draft.met),
    cautions: list(draft.cautions, base?.cautions),
    easier: list(draft.easier, base?.easier),
    harder: list(draft.harder, base?.harder),
    seconds: pair(draft.seconds),
    handsShare: draft.pose === "" ? undefined : { pose: draft.pose },
    figure: readFigureDraft(draft, base?.figure),
  });
}

function tempo(draft: MoveDraft): unknown {
  if (draft.tempo === "") return undefined;
  if (draft.tempo === "held") return { holdSeconds: true };
  return filled(Object.fromEntries(TEMPO_KEYS.map((key) => [key, number(draft.times[key])])));
}

function springs(drafts: MoveDraft["springs"], base: Move["springs"]): unknown {
  const side = (key: "min" | "max") => {
    const counts = filled(Object.fromEntries(Object.entries(drafts).map(([id, draft]) => [id, number(draft[key])])));
    return Object.keys(counts).length > 0 ? counts : isEmpty(base?.[key]) ? {} : undefined;
  };
  const both = filled({ min: side("min"), max: side("max") });
  return Object.keys(both).length > 0 || isEmpty(base) ? both : undefined;
}

function figureDraft(figure: Move["figure"], units: DraftUnits): FigureDraft {
  const shown = (by: PhaseCorrection = {}) =>
    Object.fromEntries(
      CORRECTION_KEYS.filter((key) => by[key] !== undefined).map((key) => {
        const value = by[key] ?? 0;
        return [key, text(isLength(key) ? smallNumber(value, units) : value)];
      }),
    );
  return { start: shown(figure?.start), end: shown(figure?.end) };
}

/** A value that reads as the base's does is the base's own; null for no correction is left out. */
export function readFigureDraft({ figure, units }: Pick<MoveDraft, "figure" | "units">, base: Move["figure"]): unknown {
  const before = figureDraft(base, units);
  const phases = PHASES.map((phase) => {
    const values = CORRECTION_KEYS.map((key) => {
      const typed = figure[phase][key] ?? "";
      if (typed === before[phase][key]) return [key, base?.[phase]?.[key]];
      const n = number(typed);
      return [key, n !== undefined && isLength(key) ? toMm(n, smallUnit(units)) : n];
    });
    const by = filled(Object.fromEntries(values));
    return [phase, Object.keys(by).length > 0 || isEmpty(base?.[phase]) ? by : undefined];
  });
  const both = filled(Object.fromEntries(phases));
  return Object.keys(both).length > 0 || isEmpty(base) ? both : undefined;
}

const list = <T>(now: readonly T[], base: readonly T[] | undefined): readonly T[] | undefined =>
  now.length > 0 || base?.length === 0 ? now : undefined;

/** A range that reads as the base does is the base's own: what was not typed anew is never converted. */
function load({ loadN, units }: MoveDraft, base: Move["loadN"]): unknown {
  return isAsShown(loadN, loadRange(base, units)) ? base : pair(loadN, (typed) => toNewtons(typed, units.force));
}

function travel({ travel: typed, units }: MoveDraft, base: Move["travelMm"]): unknown {
  return isAsShown(typed, travelRange(base, units)) ? base : pair(typed, (n) => toMm(n, units.length));
}

const isAsShown = (a: RangeDraft, b: RangeDraft): boolean => a[0] === b[0] && a[1] === b[1];

const same = (n: number): number => n;

/** Undefined when neither is given; a missing part stays a hole for the check to report. */
function pair([from, to]: RangeDraft, scale = same): unknown {
  const part = (typed: string) => {
    const n = number(typed);
    return n === undefined ? undefined : scale(n);
  };
  return from.trim() === "" && to.trim() === "" ? undefined : [part(from), part(to)];
}

/** Undefined for an empty text, NaN for one that is not a number. A comma is a decimal point, a minus sign or a dash a minus. */
function number(typed: string): number | undefined {
  const plain = typed.trim().replace(",", ".").replace(/^[−–]/, "-");
  if (plain === "") return undefined;
  return /^[-+\d.e]+$/i.test(plain) ? Number(plain) : Number.NaN;
}

const text = (n: number | undefined): string => (n === undefined ? "" : String(n));
const range = (pair: readonly [number, number] | undefined): RangeDraft =>
  pair ? [text(pair[0]), text(pair[1])] : NO_RANGE;

const loadRange = (n: Move["loadN"], units: DraftUnits): RangeDraft =>
  range(n && [typedForce(n[0], units), typedForce(n[1], units)]);
const travelRange = (mm: Move["travelMm"], units: DraftUnits): RangeDraft =>
  range(mm && [typedLength(mm[0], units), typedLength(mm[1], units)]);

const isEmpty = (value: object | undefined): boolean => value !== undefined && Object.keys(value).length === 0;

function filled<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T; // the same keys, or fewer
}
