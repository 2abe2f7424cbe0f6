/** The force over the travel for a chart: the corners of the line, and round numbers for the axes. */
import { NOISE } from "#lib/numbers/round.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { combinedSpring, forceN } from "./load.ts";

export interface CurvePoint {
  readonly xMm: number;
  readonly newtons: number;
}

/** Both ends, and the place between them where slack springs begin to pull. Straight lines between these are exact. */
export function curvePoints(
  equipment: Equipment,
  springs: Readonly<Record<string, number>>,
  over: { fromMm: number; toMm: number; offsetMm: number },
): CurvePoint[] {
  const { fromMm, toMm, offsetMm } = over;
  const { preloadN, stiffnessNPerMm } = combinedSpring(equipment, springs);
  const pullsFromMm = stiffnessNPerMm > 0 ? -preloadN / stiffnessNPerMm - offsetMm : fromMm;
  const corners = pullsFromMm > fromMm && pullsFromMm < toMm ? [fromMm, pullsFromMm, toMm] : [fromMm, toMm];
  return corners.map((xMm) => ({ xMm, newtons: forceN(equipment, springs, { xMm, offsetMm }) }));
}

/** Round numbers from 0 to the first at or above `top`, in steps of 1, 2 or 5 times a power of ten. */
export function axisTicks(top: number, wanted = 4): number[] {
  const raw = Math.max(top, 1) / wanted;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5, 10].find((m) => m * power >= raw) ?? 10) * power;
  return Array.from({ length: Math.ceil(Math.max(top, 1) / step - NOISE) + 1 }, (_, i) => i * step);
}
