/**
 * A spring measured with a luggage scale: readings of travel and force become stiffness and preload, with residuals and
 * advice on whether the readings lie on a line and which one to take again.
 */
import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { distanceWords, forceWords, stiffnessWords } from "#lib/formats/units.ts";
import {
  leastSquaresLine,
  lineThroughOrigin,
  offLine,
  type Point,
  residualSumOfSquaresBent,
  residualSumOfSquaresWithout,
  type SpringLine,
} from "./spring-line.ts";

/** One reading: how far the carriage is from where the spring is hooked on, and what the scale shows. */
export interface SpringReading {
  readonly travelMm: number;
  readonly newtons: number;
}

export type SpringFit =
  | {
      readonly ok: true;
      /** Slope of the line, N/mm. */
      readonly stiffnessNPerMm: number;
      /** Where the line meets travel 0, N. Below 0 something is wrong: see `say` and `fitForRoom`. */
      readonly preloadN: number;
      /** Reading minus line, N, in the order of the readings. */
      readonly residualsN: readonly number[];
      /** N, with n - 2 degrees of freedom (n - 1 without preload). */
      readonly residualSdN: number;
      /** 0..1; without preload it uses the sum of squares about 0. */
      readonly rSquared: number;
      /** Standard errors, N/mm and N. */
      readonly sdStiffness: number;
      readonly sdPreload: number;
      /** No reading is further off the line than the scale's own error. */
      readonly straight: boolean;
      /** Index of the one reading without which the others lie on a line; null if there is none. */
      readonly doubtful: number | null;
      /** One or two sentences for whoever measured, in their units. */
      readonly say: string;
    }
  | { readonly ok: false; readonly say: string };

export interface FitOptions {
  /** "none" when the spring is known to begin to pull at travel 0: the line then goes through the origin. */
  readonly preload?: "free" | "none";
  /** The scale's error, N. Default: 2% of the largest reading, at least 1 N. */
  readonly scaleErrorN?: number;
  /** The units of the sentences. Default: the standard's. */
  readonly words?: FitUnits;
}

type FitUnits = Pick<Formats, "force" | "length">;

/** Readings at two travels always lie on a line; three travels show whether a line is right. */
const FEWEST_READINGS = 3;
/** A luggage scale shows tenths of a kilogram and is good to about 2% (common practice, no source). */
const SCALE_SHARE = 0.02;
const SCALE_LEAST_N = 1;

/**
 * Ordinary least squares of newtons on travel. Refuses, with one sentence, fewer than three readings or three different
 * travels, values that are not numbers, and a force that does not grow with travel. Never throws.
 */
export function fitSpring(readings: readonly SpringReading[], options: FitOptions = {}): SpringFit {
  const f = options.words ?? STANDARD_FORMATS;
  const refused = refusal(readings);
  if (refused) return { ok: false, say: refused };
  const points = readings.map((r) => ({ x: r.travelMm, y: r.newtons }));
  const drawLine = options.preload === "none" ? lineThroughOrigin : leastSquaresLine;
  const line = drawLine(points);
  if (!(line.slope > 0)) return { ok: false, say: NOT_GROWING };
  const scaleErrorN = options.scaleErrorN ?? scaleErrorOf(readings);
  const verdict = judge(points, drawLine, scaleErrorN);
  return {
    ok: true,
    stiffnessNPerMm: line.slope,
    preloadN: line.intercept,
    residualsN: line.residuals,
    residualSdN: line.residualSd,
    rSquared: line.rSquared,
    sdStiffness: line.sdSlope,
    sdPreload: line.sdIntercept,
    straight: verdict.kind === "straight",
    doubtful: "index" in verdict ? verdict.index : null,
    say: [sayVerdict(verdict, line, readings, f), sayPreload(line, scaleErrorN, f)].filter(Boolean).join(" "),
  };
}

/**
 * The fit as a room can use it. A preload below 0 within the error of the readings counts as none, and the line goes
 * through the origin. One further below 0 is refused: the travel was not measured from where the spring begins to pull.
 */
export function fitForRoom(readings: readonly SpringReading[], options: FitOptions = {}): SpringFit {
  const free = fitSpring(readings, options);
  if (!free.ok || free.preloadN >= 0) return free;
  const scaleErrorN = options.scaleErrorN ?? scaleErrorOf(readings);
  if (-free.preloadN <= uncertainty(free.sdPreload, scaleErrorN)) {
    return fitSpring(readings, { ...options, preload: "none" });
  }
  return { ok: false, say: saySlack(-free.preloadN / free.stiffnessNPerMm, options.words ?? STANDARD_FORMATS) };
}

const NOT_GROWING = "The force does not grow with the travel. Check that travel and force are not swapped.";

function refusal(readings: readonly SpringReading[]): string | null {
  const bad = readings.findIndex((r) => !isReading(r.travelMm) || !isReading(r.newtons));
  if (bad >= 0) return `Reading ${bad + 1} needs a travel and a force, neither below 0.`;
  if (readings.length < FEWEST_READINGS) return "Take at least three readings: two always lie on a line.";
  if (new Set(readings.map((r) => r.travelMm)).size < FEWEST_READINGS) {
    return "Take readings at three different travels at least: those at two travels always lie on a line.";
  }
  return null;
}

const isReading = (x: number): boolean => Number.isFinite(x) && x >= 0;

type Verdict =
  | { readonly kind: "straight"; readonly offN: number }
  | { readonly kind: "doubtful"; readonly index: number; readonly offN: number }
  | { readonly kind: "too-few" | "scattered"; readonly offN: number }
  /** `index` is the reading without which the others lie on a line too; null if there is none. */
  | { readonly kind: "bent-up" | "bent-down"; readonly offN: number; readonly index: number | null };

/**
 * Straight if no reading is further off the line than the scale's error. Otherwise two explanations are compared, each with
 * one more parameter: one wrong reading, or a spring that bends. The one with the smaller sum of squares is named, a wrong
 * reading only if the others then lie on a line. Three readings cannot show which is wrong.
 */
function judge(points: readonly Point[], drawLine: typeof leastSquaresLine, scaleErrorN: number): Verdict {
  const line = drawLine(points);
  const offN = Math.max(...line.residuals.map(Math.abs));
  if (furthest(line) <= scaleErrorN) return { kind: "straight", offN };
  if (points.length <= FEWEST_READINGS) return { kind: "too-few", offN };
  const left = points.map((_, i) => residualSumOfSquaresWithout(line, i));
  const index = left.indexOf(Math.min(...left));
  const bent = residualSumOfSquaresBent(points, line, drawLine);
  const others = points.filter((_, i) => i !== index);
  const othersLie = canFit(others) && furthest(drawLine(others)) <= scaleErrorN;
  if ((left[index] ?? 0) < bent && othersLie) return { kind: "doubtful", index, offN: offOthers(line, index) };
  if (bent * 2 >= line.residualSumOfSquares) return { kind: "scattered", offN };
  return { kind: bendOf(points, line), offN, index: othersLie ? index : null };
}

const canFit = (points: readonly Point[]): boolean => new Set(points.map((p) => p.x)).size >= 2;

const furthest = (line: SpringLine): number => Math.max(...line.residuals.map((_, i) => Math.abs(offLine(line, i))));

/** How far a reading is off the line through the others. */
function offOthers(line: SpringLine, index: number): number {
  return Math.abs(line.residuals[index] ?? 0) / (1 - (line.leverages[index] ?? 0));
}

/** Readings below the line in the middle and above it at the ends mean a spring that gets stiffer. */
function bendOf(points: readonly Point[], line: SpringLine): "bent-up" | "bent-down" {
  const byTravel = points.map((p, i) => ({ x: p.x, off: line.residuals[i] ?? 0 })).sort((a, b) => a.x - b.x);
  const ends = (byTravel[0]?.off ?? 0) + (byTravel.at(-1)?.off ?? 0);
  return ends > 0 ? "bent-up" : "bent-down";
}

const scaleErrorOf = (readings: readonly SpringReading[]): number =>
  Math.max(SCALE_LEAST_N, SCALE_SHARE * Math.max(...readings.map((r) => r.newtons)));

/** The error of a preload: the scale's error or two standard errors, whichever is more. */
const uncertainty = (sdPreload: number, scaleErrorN: number): number => Math.max(scaleErrorN, 2 * sdPreload);

function sayVerdict(verdict: Verdict, line: SpringLine, readings: readonly SpringReading[], f: FitUnits): string {
  const force = (n: number) => forceWords(n, f, true);
  const readingWords = (r: SpringReading) => `(${distanceWords(r.travelMm, f, true)}, ${force(r.newtons)})`;
  const off = force(verdict.offN);
  switch (verdict.kind) {
    case "straight":
      return `The readings lie on a line: ${stiffnessWords(line.slope, f)}, preload ${force(line.intercept)}, none off it by more than ${off}.`;
    case "doubtful": {
      const r = readings[verdict.index];
      return `Reading ${verdict.index + 1}${r ? ` ${readingWords(r)}` : ""} is ${off} off the line of the others. Take it again.`;
    }
    case "too-few":
      return `The readings do not lie on a line: one is ${off} off, and three are too few to tell which is wrong. Take more.`;
    case "bent-up":
    case "bent-down": {
      const how = verdict.kind === "bent-up" ? "stiffer" : "softer";
      const bend = `The readings bend: the spring gets ${how} the further it goes, up to ${off} off a line. Measure only the travel that the class uses.`;
      const r = verdict.index === null ? undefined : readings[verdict.index];
      if (!r) return bend;
      return `${bend} Or reading ${(verdict.index ?? 0) + 1} ${readingWords(r)} is wrong. Take it again first.`;
    }
    case "scattered":
      return `The readings do not lie on a line: they are up to ${off} off, and no single one is to blame. Take them all again.`;
  }
}

function sayPreload(line: SpringLine, scaleErrorN: number, f: FitUnits): string {
  if (line.intercept >= 0) return "";
  if (-line.intercept <= uncertainty(line.sdIntercept, scaleErrorN)) {
    return "The preload comes out slightly below 0, within the error of the readings, so it counts as none.";
  }
  return saySlack(-line.intercept / line.slope, f);
}

const saySlack = (mm: number, f: FitUnits): string =>
  `The spring hangs slack for the first ${distanceWords(mm, f)}. Measure the travel from where it begins to pull.`;
