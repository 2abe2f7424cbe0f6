/**
 * The readings of a luggage scale that a studio keeps with its machines: what was read, in which units, and which readings
 * were left out of the fit. Never part of a plan.
 */

import * as z from "zod/mini";
import { FORCE_UNITS, type ForceUnit } from "#lib/formats/formats.ts";
import { toMm, toNewtons } from "#lib/formats/units.ts";
import { tenth } from "#lib/numbers/round.ts";
import { numberFrom } from "#lib/plan/number-fields.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";
import type { SpringReading } from "./spring-fit.ts";

export const TRAVEL_UNITS = ["mm", "cm", "in"] as const;
export type TravelUnit = (typeof TRAVEL_UNITS)[number];

/** Rounded to twelve digits, which gives back what was typed. */
export const fromMm = (mm: number, unit: TravelUnit): number => Number((mm / toMm(1, unit)).toPrecision(12));
export const fromNewtons = (newtons: number, unit: ForceUnit): number =>
  Number((newtons / toNewtons(1, unit)).toPrecision(12));

const springReadingSchema = z.strictObject({
  travelMm: numberFrom(0, 5000),
  newtons: numberFrom(0, 5000),
  /** Kept and shown, but left out of the fit. */
  leftOut: z.optional(z.literal(true)),
});
/** All readings of one spring. The numbers are millimetres and newtons; the units are those that were typed. */
export const sheetSchema = z.strictObject({
  travelUnit: z.enum(TRAVEL_UNITS),
  forceUnit: z.enum(FORCE_UNITS),
  readings: z.array(springReadingSchema).check(z.maxLength(100)),
});
export type KeptReading = z.infer<typeof springReadingSchema>;
export type ReadingSheet = z.infer<typeof sheetSchema>;
/** A sheet and when it was saved, ms since the epoch. */
const keptSheetSchema = z.extend(sheetSchema, { at: z.number() });
export type KeptSheet = z.infer<typeof keptSheetSchema>;
/** By spring id. */
const roomReadingsSchema = z.record(z.string().check(z.regex(ID_PATTERN)), keptSheetSchema);
export type RoomReadings = z.infer<typeof roomReadingsSchema>;

/** The readings that count, with their indexes among all. */
export function countedReadings(readings: readonly KeptReading[]): { readings: SpringReading[]; places: number[] } {
  const places = readings.flatMap((reading, i) => (reading.leftOut ? [] : [i]));
  const counted = readings.filter((reading) => !reading.leftOut);
  return { readings: counted.map(({ travelMm, newtons }) => ({ travelMm, newtons })), places };
}

/** A fit rounded for the room's spring, exact to a tenth of a newton over a metre of travel. */
export const roundedSpring = (fit: { stiffnessNPerMm: number; preloadN: number }) => ({
  stiffnessNPerMm: Math.round(fit.stiffnessNPerMm * 1e4) / 1e4,
  preloadN: tenth(fit.preloadN),
});
