/** Formats as they come over the network: what is no language's names and patterns is refused, so that a device shows days at all. */
import * as z from "zod/mini";
import { isTimeZone } from "#lib/calendar/zone.ts";
import { DATE_LANGUAGES } from "./date-languages.ts";
import { CLOCKS, FORCE_UNITS, type Formats, LENGTH_UNITS, STANDARD_FORMATS, WEEK_STARTS } from "./formats.ts";

const names = (count: number) => z.array(z.string()).check(z.length(count));
const patterns = Object.fromEntries(
  Object.keys(STANDARD_FORMATS.words.patterns).map((name) => [name, z.string()]),
) as Record<keyof Formats["words"]["patterns"], z.ZodMiniString>; // its own keys

export const formatsSchema = z.object({
  dates: z.enum(DATE_LANGUAGES),
  clock: z.enum(CLOCKS),
  weekStart: z.literal([...WEEK_STARTS]),
  force: z.enum(FORCE_UNITS),
  length: z.enum(LENGTH_UNITS),
  zone: z.string().check(z.refine(isTimeZone)),
  words: z.object({
    ...{ months: names(12), monthsShort: names(12), monthsAlone: names(12), days: names(7), daysShort: names(7) },
    halves: z.tuple([z.string(), z.string()]),
    patterns: z.object(patterns),
  }),
});
